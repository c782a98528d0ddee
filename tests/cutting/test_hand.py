"""The hand at the wheel."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting import hand
from jobsheet.cutting.textbook import handwheel
from jobsheet.errors import CalcError


@given(st.floats(1e-5, 0.1), st.floats(1e-3, 0.01))
def test_pace_and_seconds_are_one_thing(feed, lead):
    assert hand.handle_speed(feed, lead) * hand.seconds_a_turn(feed, lead) == pytest.approx(1.0)
    assert hand.stopwatch_feed(1, lead, hand.seconds_a_turn(feed, lead)) == pytest.approx(feed)


@given(st.floats(0, 1), st.floats(1e-3, 0.01))
def test_the_rest_is_less_than_a_turn(distance, lead):
    rest = handwheel.past_last_turn(distance, lead)
    assert 0 <= rest <= lead * (1 + 1e-9)
    turns = round((distance - rest) / lead)
    assert turns * lead + rest == pytest.approx(distance, abs=1e-9)


@pytest.mark.parametrize("turns", [1, 3, 7, 12, 100])
def test_whole_turns_leave_nothing(turns):
    assert handwheel.past_last_turn(turns * 2.54e-3, 2.54e-3) == pytest.approx(0, abs=1e-12)


def test_a_longer_crank_is_lighter():
    assert hand.crank_force(900, 2.5e-3, 0.3, 0.11) == pytest.approx(
        hand.crank_force(900, 2.5e-3, 0.3, 0.055) / 2
    )


@pytest.mark.parametrize("put", [(0, 2.5e-3), (1e-3, 0)])
def test_refuses_nothing(put):
    with pytest.raises(CalcError):
        hand.handle_speed(*put)


def test_a_hair_short_of_a_whole_turn_leaves_nothing_and_not_less_than_nothing():
    assert handwheel.past_last_turn(3 * (1 - 1e-10), 1.0) == 0
    assert handwheel.past_last_turn(0, 2e-3) == 0
    assert handwheel.past_last_turn(3 * (1 - 1e-8), 1.0) == pytest.approx(1, abs=1e-6)
