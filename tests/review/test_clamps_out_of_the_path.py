"""A strap whose width nobody says counts along its middle alone."""

from __future__ import annotations

import pytest

from jobsheet.model.held_work import Body
from jobsheet.review.rules.holding.clamps_out_of_the_path import _middle


@pytest.mark.parametrize(
    ("low", "high", "across", "middle"),
    [
        ((0, 0, 0), (0.030, 0.080, 0.016), 0, 0.015),
        ((0.010, 0.020, 0), (0.090, 0.050, 0.016), 1, 0.035),
        ((0, 0, 0), (0.03, 0.03, 0.01), 1, 0.015),
    ],
)
def test_it_is_two_millimetres_wide_across_its_shorter_side(low, high, across, middle):
    found = _middle(Body(part="strap", low=low, high=high))
    assert (found.low[across], found.high[across]) == pytest.approx((middle - 1e-3, middle + 1e-3))
    for axis in {0, 1, 2} - {across}:
        assert (found.low[axis], found.high[axis]) == (low[axis], high[axis])
    stud = Body(part="stud", low=low, high=high)
    assert _middle(stud) is stud
