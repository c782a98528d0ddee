"""The hand at the wheel."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting import hand
from jobsheet.errors import CalcError


@given(st.floats(1e-5, 0.1), st.floats(1e-3, 0.01))
def test_pace_and_seconds_are_one_thing(feed, lead):
    assert hand.handle_speed(feed, lead) * hand.seconds_a_turn(feed, lead) == pytest.approx(1.0)
    assert hand.stopwatch_feed(1, lead, hand.seconds_a_turn(feed, lead)) == pytest.approx(feed)


def test_a_longer_crank_is_lighter():
    assert hand.crank_force(900, 2.5e-3, 0.3, 0.11) == pytest.approx(
        hand.crank_force(900, 2.5e-3, 0.3, 0.055) / 2
    )


@pytest.mark.parametrize("put", [(0, 2.5e-3), (1e-3, 0)])
def test_refuses_nothing(put):
    with pytest.raises(CalcError):
        hand.handle_speed(*put)
