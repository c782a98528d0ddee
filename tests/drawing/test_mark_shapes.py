"""The signs of verdicts and holdings, on their grid and at any size."""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import Line
from jobsheet.drawing.mark_shapes import MARKS, mark


@pytest.mark.parametrize("name", MARKS)
def test_every_mark_stays_in_its_square(name):
    for item in mark(name, 16).items:
        points = (
            item.points
            if isinstance(item, Line)
            else ((item.x - item.a, item.y - item.b), (item.x + item.a, item.y + item.b))
        )
        assert all(-0.01 <= x <= 16.01 and -0.01 <= y <= 16.01 for x, y in points)


def test_no_two_verdicts_have_the_same_shape():
    shapes = {mark(name, 16).items for name in ("cut before", "expected", "tight", "beyond")}
    assert len(shapes) == 4


def test_an_unknown_verdict_has_no_mark():
    assert mark("unknown", 16).items == ()
