"""A keyway: as long as it is said with both round ends, as wide as its cutter, in layers."""

from __future__ import annotations

import math

import pytest

from jobsheet.errors import CalcError
from jobsheet.operations.kinds.keyway import crown
from tests.operations.hole_steps import Step, refusal

KEYWAY = {"cutter": "slot drill 6 mm, 2 teeth, 20 mm out", "start": "15, 25", "length": "25", "along": "x", "depth": "3.5", "layer": "0.6", "feed_per_tooth": "0.02", "spindle": "300 rpm"}  # fmt: skip
STEEL = {"material": "S235"}


def test_its_length_is_from_end_to_end():
    """25 over all with a cutter of 6: its middle goes 19."""
    (groove,) = Step("keyway", KEYWAY, **STEEL).shapes
    assert math.dist((groove.x1, groove.y1), (groove.x2, groove.y2)) + groove.width == pytest.approx(25e-3)
    assert (groove.width, groove.depth) == pytest.approx((6e-3, 3.5e-3))


def test_layers_are_as_deep_as_is_said_at_most():
    """3.5 in layers of 0.6 are six."""
    step = Step("keyway", KEYWAY, **STEEL)
    assert step.value("layers") == step.value("passes") == math.ceil(3.5 / 0.6)
    assert step.value("cutting_time") == pytest.approx(6 * step.value("time_each"))


def test_what_comes_off_a_flat_is_a_slot_with_round_ends():
    step = Step("keyway", KEYWAY, **STEEL)
    assert step.value("volume") * 1e9 == pytest.approx((19 * 6 + math.pi / 4 * 36) * 3.5, rel=1e-6)


def test_of_a_shaft_the_crown_is_said():
    """What a flat as wide as the key lies under the top of a shaft: r − √(r² −
    (w / 2)²), for 6 on 25 it is 0.365 mm.
    """
    assert Step("keyway", {**KEYWAY, "shaft": "25"}, **STEEL).value("crown") * 1e3 == pytest.approx(
        12.5 - math.sqrt(12.5**2 - 9), abs=1e-4
    )


def test_a_keyway_shorter_than_its_cutter_is_refused():
    assert refusal("keyway", {**KEYWAY, "length": "5"}, **STEEL)


@pytest.mark.parametrize(
    ("width", "shaft", "height"), [(6, 10, 1.0), (8, 10, 2.0), (10, 26, 1.0), (24, 26, 8.0)]
)
def test_the_crown_of_a_shaft_by_right_angled_triangles_of_whole_numbers(width, shaft, height):
    """Pythagoras: 3, 4, 5 and 5, 12, 13; a keyway 6 wide in a shaft of 10 leaves 5 - 4 = 1 above its edges."""
    assert crown(width * 1e-3, shaft * 1e-3) == pytest.approx(height * 1e-3)


def test_a_keyway_as_wide_as_its_shaft_is_refused():
    with pytest.raises(CalcError, match=r"shaft diameter is 8 mm; it must be more than the width"):
        crown(8e-3, 8e-3)
    assert crown(7.999e-3, 8e-3) < 4e-3
