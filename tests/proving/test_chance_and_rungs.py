"""The chance from the cells against the whole grid, and what the next rung may ask."""

from __future__ import annotations

import math

import numpy as np
import pytest
from msgspec.structs import replace
from scipy.special import ndtr

from jobsheet.model.capacity import Capacity
from jobsheet.proving.assumed import NOISE, PRIOR_SPREAD
from jobsheet.proving.chance import chance_over, largest_share
from jobsheet.proving.grid import Said, posterior
from jobsheet.proving.rungs import next_share
from jobsheet.reckoning.known_capacity import prior
from tests.proving.trials import taught, trial

EVIDENCE = {
    "nothing much": ("slipped 0.5",),
    "one clean": ("clean 0.6",),
    "narrow": ("clean 0.8", "clean 0.9", "clean 0.95", "chatter 1.0", "chatter 1.05", "chatter 1.1"),
    "two humps": ("clean 2.0", "chatter 0.5"),
    "a sharp edge and a long tail": ("clean 0.9", "clean 0.92", "clean 0.94", "clean 0.96"),
    "a first rung": ("chatter 0.4",),
    "noisy": ("clean 0.7", "noisy 0.8"),
}


@pytest.mark.parametrize("extra", [0.0, 0.2])
@pytest.mark.parametrize("name", EVIDENCE)
def test_cells_keep_every_chance_to_a_thousandth(name, extra):
    """Against all cells of the grid, with scipy's normal distribution."""
    words = [one.split() for one in EVIDENCE[name]]
    found = taught(*(trial(word, chatter=float(share)) for word, share in words)).capacities[0]
    sides = {"clean": "above", "chatter": "below", "noisy": "near"}
    said = [Said(sides[word], math.log(float(share))) for word, share in words if word in sides]
    whole = posterior({("side", "end mill"): said}, PRIOR_SPREAD["chatter"])
    weights = whole.processes["side", "end mill"]
    assert len(found.cells) <= 200
    for share in np.exp(np.linspace(-4, 4, 801)):
        exact = float((weights * ndtr((math.log(share) - whole.places) / math.hypot(NOISE, extra))).sum())
        assert chance_over(found, float(share), extra) == pytest.approx(exact, abs=0.001)


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


def test_nothing_known_allows_nothing():
    assert largest_share(replace(prior("chatter", "side", ""), cells=())) == 0
    assert next_share(replace(prior("chatter", "side", ""), cells=()), None) is None


def test_the_next_rung_is_bound_by_growth_by_chance_or_ended():
    many = taught(*(trial("clean", torque=0.5) for _ in range(3)), trial("clean", torque=1.4)).capacities[0]
    assert next_share(many, 0.5) == pytest.approx(0.625)  # 1.25 times the last clean one
    few = taught(trial("clean", torque=0.57)).capacities[0]
    assert 0.57 < next_share(few, 0.57) == largest_share(few) < 0.57 * 1.25
    assert next_share(few, 0.9) is None  # more than the last clean one would be too much
    for outcome in ("slowed", "stalled", "broke", "slipped", "too hard to wind"):
        ended = taught(trial("clean", torque=0.5), trial(outcome, torque=0.6)).capacities[0]
        assert next_share(ended, 0.5) is None
    for outcome in ("noisy", "chatter"):
        ended = taught(trial("clean", chatter=0.5), trial(outcome, chatter=0.6)).capacities[0]
        assert next_share(ended, 0.5) is None


def test_without_one_clean_cut_the_plan_stays_far_below_the_first_bad_end():
    """Only the card says how far: two fifths of the lightest, until such a cut ran clean."""
    bad = taught(trial("chatter", chatter=0.4)).capacities[0]
    assert bad.bad == (pytest.approx(0.4),)
    assert largest_share(bad) == pytest.approx(0.16)
    assert bad.planned == pytest.approx(0.16)
    both = taught(trial("clean", chatter=0.3), trial("chatter", chatter=0.4)).capacities[0]
    assert largest_share(both) > 0.2  # such a cut ran clean: the chance alone says it
