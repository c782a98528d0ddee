"""Forces of single teeth, summed over a turn."""

from __future__ import annotations

import math
from math import pi

import pytest

from jobsheet.cutting.kienzle import specific_cutting_force
from jobsheet.cutting.textbook.tooth_forces import helix_lag, slot_side_force

from .published_forces import FULL, cut
from .row import MM


def test_four_teeth_in_a_slot_push_steadily_whatever_the_helix():
    for helix in (0, 10, 30, 45):
        got = cut(12, 4, helix, 2, FULL, 0.04)
        expected = slot_side_force(
            specific_cutting_force(1500e6, 0.21, 0.04 * MM * 2 / pi, 1.1), 2 * MM, 0.04 * MM, 4
        )
        assert (got.side_low, got.side_high) == pytest.approx((expected, expected), rel=1e-6)
        assert (got.feed_low, got.feed_high) == pytest.approx((-0.4 * expected, -0.4 * expected), rel=1e-6)


def test_the_helix_lags_by_its_height():
    assert helix_lag(12 * MM, pi / 4, 12 * MM) == pytest.approx(2.0)
    assert helix_lag(12 * MM, 1.5, 12 * MM) == pytest.approx(2 * math.tan(1.5))
    assert helix_lag(12 * MM, -1.5, 12 * MM) == pytest.approx(-2 * math.tan(1.5))
