"""Whether bands hold the truth and ladders stay gentle, on invented machines whose truth is known.

Bounds are the issue's (5, Proof): nine in ten hold 87-93 % where machines are as assumed, and 80 % where they
are not; at most 15 % of rungs end badly, and a cut asks on average at most 5 % more than there is. The short
rounds have fewer machines and bounds wider by three standard errors of that many. A cut that ended well but
was noted wrongly did not end badly.

The overshoot is that of all cuts that were made. That of a ladder's largest cut alone is 3 to 10 %: a ladder
that ends at the first sign has gone over, by up to a rung of 1.25.
"""

from __future__ import annotations

import math

import pytest

from tests.proving.simulate import AS_ASSUMED, OTHERWISE, WORSE, climb

LIMITS = ("spindle-torque", "chatter")
MANY, FEW, SEED = 2000, 120, 20261125
ENDED, OVERSHOOT = 0.15, 0.05


def slack(of: float, ladders: int) -> float:
    """Three standard errors of a share."""
    return 3 * math.sqrt(of * (1 - of) / ladders)


@pytest.mark.parametrize("limit", LIMITS)
def test_short_round_where_machines_are_as_assumed(limit):
    found = climb(limit, AS_ASSUMED, FEW, SEED)
    assert 0.87 - slack(0.87, found.ladders) <= found.held <= 0.93 + slack(0.93, found.ladders)
    assert found.ended <= ENDED
    assert found.overshoot <= OVERSHOOT


@pytest.mark.parametrize("limit", LIMITS)
def test_short_round_where_they_are_otherwise(limit):
    found = climb(limit, OTHERWISE, FEW, SEED)
    assert found.held >= 0.80 - slack(0.80, found.ladders)
    assert found.ended <= ENDED
    assert found.overshoot <= OVERSHOOT


@pytest.mark.long
@pytest.mark.parametrize("limit", LIMITS)
def test_nine_in_ten_hold_where_machines_are_as_assumed(limit):
    found = climb(limit, AS_ASSUMED, MANY, SEED)
    assert 0.87 <= found.held <= 0.93
    assert max(found.ended, found.noted) <= ENDED
    assert found.overshoot <= OVERSHOOT


@pytest.mark.long
@pytest.mark.parametrize("limit", LIMITS)
def test_eight_in_ten_hold_where_they_are_otherwise(limit):
    found = climb(limit, OTHERWISE, MANY, SEED)
    assert found.held >= 0.80
    assert found.ended <= ENDED
    assert found.overshoot <= OVERSHOOT


@pytest.mark.long
@pytest.mark.parametrize("limit", LIMITS)
def test_worse_than_the_issue_asks_hardly_a_band_promises_too_much(limit):
    """Bands then hold 77 % (torque) and 83 % (chatter); two misses in three are a truth
    above the band, which harms nobody.
    """
    found = climb(limit, WORSE, MANY, SEED)
    assert found.below <= 0.10
    assert found.ended <= ENDED
    assert found.overshoot <= OVERSHOOT
