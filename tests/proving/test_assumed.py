"""What is assumed before the first trial: which outcome speaks for or against which limit."""

from __future__ import annotations

import pytest

from jobsheet.model.trials import LEARNED, OUTCOMES
from jobsheet.proving.assumed import (
    BIAS,
    CHANCE,
    GROWTH,
    MEASURED_SPREAD,
    NEAR,
    NOISE,
    PRIOR_SPREAD,
    ends_badly,
    says,
    spread_of,
)

ALL = frozenset(LEARNED)


def test_a_frame_that_was_pushed_is_known_better_and_a_spindle_not():
    assert spread_of("chatter", measured=True) == MEASURED_SPREAD < spread_of("chatter", measured=False)
    assert (
        spread_of("spindle-torque", measured=True)
        == spread_of("spindle-torque", measured=False)
        == PRIOR_SPREAD["spindle-torque"]
    )


@pytest.mark.parametrize("outcome", OUTCOMES)
def test_every_outcome_but_a_clean_one_ends_some_ladder(outcome):
    ended = {limit for limit in LEARNED if ends_badly(outcome, limit, ALL)}
    assert (outcome == "clean") == (not ended)
    assert {says(outcome, limit) for limit in LEARNED} <= {"above", "below", "near", ""}


def test_what_rang_was_carried_by_the_spindle():
    assert ends_badly("chatter", "chatter", ALL)
    assert not ends_badly("chatter", "spindle-torque", ALL)
    assert ends_badly("chatter", "spindle-torque", frozenset({"spindle-torque"})), (
        "where it asked nothing else it ends what it asked"
    )
    assert says("no such outcome", "chatter") == ""


def test_near_is_a_quarter_and_the_next_cut_asks_at_most_that_more():
    """ln 1.25 = 0.2231."""
    import math

    assert pytest.approx(math.log(1.25)) == NEAR
    assert GROWTH == 1.25
    assert CHANCE == 0.10
    assert 0 < NOISE < BIAS < PRIOR_SPREAD["chatter"]
