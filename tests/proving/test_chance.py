"""The chance that a cut asks more than was learned: cells against the whole
grid, and the normal distribution.
"""

from __future__ import annotations

import math

import pytest

from jobsheet.model.capacity import Capacity
from jobsheet.proving.assumed import NOISE
from jobsheet.proving.chance import chance_over, largest_share
from jobsheet.reckoning.known_capacity import prior
from tests.proving.trials import taught, trial


def test_one_cell_is_a_normal_distribution():
    """By hand: at the capacity itself one in two; one noise below it 15.87 %, the normal distribution's."""
    one = Capacity(
        limit="chatter", process="side", cutter_kind="", low=1, median=1, high=1, cells=((0.0, 1.0),)
    )
    assert chance_over(one, 1.0) == pytest.approx(0.5)
    assert chance_over(one, math.exp(-NOISE)) == pytest.approx(0.1587, abs=5e-5)
    assert chance_over(one, math.exp(-0.2), extra_spread=0.16) == pytest.approx(0.1587, abs=5e-5)
    assert largest_share(one, 0.5) == pytest.approx(1.0, rel=1e-5)


def test_chances_at_the_ends():
    one = prior("chatter", "side", "end mill")
    assert [chance_over(one, share) for share in (0.0, -1.0, math.nan)] == [0, 0, 0]
    assert chance_over(one, math.inf) == 1
    assert chance_over(one, 1e300) == pytest.approx(1)
    assert chance_over(one, 1e-300) == pytest.approx(0)


@pytest.mark.parametrize("chance", [0.01, 0.10, 0.15, 0.50])
def test_the_largest_share_has_just_that_chance(chance):
    one = prior("spindle-torque", "tap", "tap")
    assert chance_over(one, largest_share(one, chance)) == pytest.approx(chance, abs=1e-4)


def test_without_one_clean_cut_the_plan_stays_far_below_the_first_bad_end():
    """Only the card says how far: two fifths of the lightest, until such a cut ran clean."""
    bad = taught(trial("chatter", chatter=0.4)).capacities[0]
    assert bad.bad == (pytest.approx(0.4),)
    assert largest_share(bad) == pytest.approx(0.16)
    assert bad.planned == pytest.approx(0.16)
    both = taught(trial("clean", chatter=0.3), trial("chatter", chatter=0.4)).capacities[0]
    assert largest_share(both) > 0.2  # such a cut ran clean: the chance alone says it


def test_after_a_bad_end_few_clean_cuts_speak_for_little_in_whatever_order_they_were_entered():
    """By hand: half of the way by its factor from 0.16 to 0.32 is 0.226, one step of a ladder above 0.16 is
    0.2; between 0.25 and 0.32, 0.283.
    """
    cuts = [trial("noisy", chatter=0.4), trial("clean", chatter=0.16), trial("noisy", chatter=0.32)]
    for some in (cuts, cuts[::-1], [cuts[1], *cuts[::2]]):
        assert taught(*some).capacities[0].planned <= 0.16 * 1.25 + 1e-9
    near = taught(trial("clean", chatter=0.25), trial("noisy", chatter=0.32)).capacities[0]
    assert near.planned <= math.sqrt(0.25 * 0.32) + 1e-9
    # Three that ran clean speak for themselves: then the chance alone says it.
    three = taught(*(trial("clean", chatter=0.16) for _ in range(3)), *cuts[::2]).capacities[0]
    assert chance_over(three, three.planned) == pytest.approx(0.10, abs=1e-4)
