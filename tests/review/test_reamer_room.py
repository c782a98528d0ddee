"""What a reamer may find on the diameter, and the drill that leaves it."""

from __future__ import annotations

import pytest

from jobsheet.review.plan.reamer_room import ROWS, drill_for, room


@pytest.mark.parametrize("millimetre", [2, 3.5, 4.3, 5, 7.1, 8, 10, 16, 22.4, 25, 40])
def test_the_drill_that_is_offered_leaves_the_room_that_is_asked(millimetre):
    diameter = millimetre / 1e3
    low, high = room(diameter)
    assert low - 1e-9 <= diameter - drill_for(diameter) <= high + 1e-9
    assert round(drill_for(diameter) * 1e4, 6) % 1 == 0


def test_larger_reamers_want_no_less():
    lows = [low for _, low, _, _ in ROWS]
    highs = [high for _, _, high, _ in ROWS]
    assert lows == sorted(lows)
    assert highs == sorted(highs)
    assert all(low < offered < high for _, low, high, offered in ROWS)


def test_the_pivot_block_s_16_is_drilled_15_7():
    """HM-103 and the published row of 12 to 22 mm: 0.3 on the diameter."""
    assert drill_for(16e-3) == pytest.approx(15.7e-3)
