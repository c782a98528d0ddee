"""The hand at the wheel, and what a stopwatch says."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting.textbook import handwheel


@given(st.floats(0, 1), st.floats(1e-3, 0.01))
def test_the_rest_is_less_than_a_turn(distance, lead):
    rest = handwheel.past_last_turn(distance, lead)
    assert 0 <= rest <= lead * (1 + 1e-9)
    turns = round((distance - rest) / lead)
    assert turns * lead + rest == pytest.approx(distance, abs=1e-9)


@pytest.mark.parametrize("turns", [1, 3, 7, 12, 100])
def test_whole_turns_leave_nothing(turns):
    assert handwheel.past_last_turn(turns * 2.54e-3, 2.54e-3) == pytest.approx(0, abs=1e-12)


def test_a_hair_short_of_a_whole_turn_leaves_nothing_and_not_less_than_nothing():
    assert handwheel.past_last_turn(3 * (1 - 1e-10), 1.0) == 0
    assert handwheel.past_last_turn(0, 2e-3) == 0
    assert handwheel.past_last_turn(3 * (1 - 1e-8), 1.0) == pytest.approx(1, abs=1e-6)
