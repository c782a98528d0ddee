"""The theory of chatter from which the shorter formula is checked."""

from __future__ import annotations

import pytest

from jobsheet.cutting.textbook import chatter_theory


def test_the_average_direction_with_the_worst_factor_is_of_the_same_size():
    b = chatter_theory.average_direction_limit(10e6, 0.04, 1800e6, teeth_in_cut=2)
    assert b == pytest.approx(chatter_theory.slot_limit_two_modes(10e6, 0.04, 1800e6, 0.3, 4), rel=0.1)


def test_a_kinder_direction_of_the_force_bears_more():
    worst, kinder = (
        chatter_theory.average_direction_limit(10e6, 0.04, 1800e6, 2, direction) for direction in (1, 0.5)
    )
    assert kinder == pytest.approx(2 * worst)
