"""An angle plate: its upright face stands where the numbers say, and its clamps press the work to it."""

from __future__ import annotations

import pytest

from jobsheet.holdings.kinds.angle_plate import rests, words
from jobsheet.model.held_work import Around

from .bodies_placed import only
from .grips_said import grip
from .said_holdings import said

AROUND = Around(size=(0.08, 0.05, 0.02))


def plate_at(**facts):
    from jobsheet.holdings.all_holdings import holding_kind

    return only(holding_kind("angle plate").bodies(said("angle plate", **facts), AROUND), "plate")[0]


def test_work_that_stands_over_its_left_end_has_no_plate_there():
    """A plate of 60 behind work of 80: 15 over the left leaves it from 15 to 75; 5 over the
    right as well; in the middle from 10.
    """
    assert (
        plate_at(width="60", over_left="15").low[0],
        plate_at(width="60", over_left="15").high[0],
    ) == pytest.approx((0.015, 0.075))
    assert plate_at(width="60", over_right="5").low[0] == pytest.approx(0.015)
    assert plate_at(width="60").low[0] == pytest.approx(0.010)


def test_its_face_is_behind_the_work():
    assert plate_at(width="60", height="100").low[1] == pytest.approx(AROUND.size[1])
    assert plate_at(width="60", height="100").sure
    assert not plate_at(width="60").sure


def test_its_clamps_press_as_straps_with_equal_arms():
    """T / (K d) = 20 / (0.20 × 0.012) = 8.33 kN a bolt; half of it presses."""
    two = grip("angle plate", clamps="2", bolt="M12", tighten="20 N·m")
    assert two.force == pytest.approx(2 * 20 / (0.20 * 0.012) / 2, rel=1e-3)
    assert grip("angle plate", clamps="2", bolt="M12") is None


def test_it_is_said_in_words():
    assert words(said("angle plate", clamps="3")) == "angle plate, 3 clamps"
    assert words(said("angle plate")) == "angle plate"
    assert rests(said("angle plate", rests_on="nothing")) == "clear of the table"
