"""What is known before a ladder: the card's own band, and what one more cut would teach."""

from __future__ import annotations

import math

import pytest
from msgspec.structs import replace

from jobsheet.model.capacity import Good
from jobsheet.model.shop import Shop
from jobsheet.proving.assumed import BIAS, PRIOR_SPREAD
from jobsheet.reckoning.known_capacity import (
    after_clean,
    after_end,
    capacities_of,
    frame_measured,
    last_clean,
    prior,
    snapshot_of,
)
from tests.proving.trials import trial


def middle(capacity):
    return sum(place * weight for place, weight in capacity.cells)


@pytest.mark.parametrize("limit", PRIOR_SPREAD)
def test_before_any_trial_it_is_the_card_with_its_spread(limit):
    """Nine in ten of a normal distribution lie within 1.645 of its standard deviation."""
    found = prior(limit, "side", "end mill")
    assert found.median == 1.0
    assert math.log(found.high) == pytest.approx(-math.log(found.low))
    assert math.log(found.high) == pytest.approx(1.6449 * math.hypot(PRIOR_SPREAD[limit], BIAS), rel=1e-4)
    assert sum(weight for _, weight in found.cells) == pytest.approx(1.0)


def test_a_clean_cut_raises_and_a_bad_end_lowers_what_is_thought():
    before = prior("chatter", "side", "end mill")
    assert middle(after_clean(before, 1.0)) > middle(before) > middle(after_end(before, 1.0))
    for after in (after_clean(before, 1.0), after_end(before, 1.0)):
        assert sum(weight for _, weight in after.cells) == pytest.approx(1.0)


def test_only_milling_asks_the_frame():
    assert [one.limit for one in capacities_of(None, "side", "end mill")] == ["spindle-torque", "chatter"]
    assert [one.limit for one in capacities_of(None, "tap", "tap")] == ["spindle-torque"]


def test_the_last_clean_cut_lies_below_every_bad_end():
    def good(share):
        return Good(share=share, date="2026-11-02", cutter="", stick_out=None, holding="")

    known = replace(prior("chatter", "side", "end mill"), good=(good(0.4), good(0.9)), bad=(0.6,))
    assert last_clean(known) == 0.4
    assert last_clean(replace(known, bad=())) == 0.9
    assert last_clean(replace(known, good=())) is None


def test_without_a_cut_there_is_nothing_to_learn_from_and_without_a_card_nothing_measured():
    assert snapshot_of("m", (), "2026-11-25", Shop()) is None
    assert snapshot_of("m", (trial("clean", changed="gibs"),), "2026-11-25", Shop()) is None
    assert not frame_measured("no-such-machine")
