"""A countersink that is wider than its chamfer, of a size that is sold."""

from __future__ import annotations

import pytest

from jobsheet.review.rules.threads.chamfer_before_tap import _usual


@pytest.mark.parametrize(
    ("to", "units", "size"),
    [
        (6.4, "mm", "9 mm"),
        (8.4, "mm", "11 mm"),
        (8.0, "mm", "10 mm"),
        (4.01, "mm", "7 mm"),
        (6.4, "in", "3/8 in"),
        (20.4, "in", "1 in"),
        (10.7, "in", "1/2 in"),
    ],
)
def test_it_is_two_millimetres_wider_at_least(to, units, size):
    assert _usual(to * 1e-3, units) == size
