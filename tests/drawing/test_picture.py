from __future__ import annotations

import itertools

import pytest

from jobsheet.drawing.drawn import Ellipse, Line, Text
from jobsheet.drawing.making import arrow, box, hatched, moved
from jobsheet.drawing.mark_shapes import MARKS, mark


def test_a_hatch_stays_inside_its_face():
    lines = hatched(box(10, 20, 30, 40), angle=45, apart=4)
    points = [point for line in lines for point in line.points]
    assert len(lines) > 10
    assert all(10 - 1e-6 <= x <= 40 + 1e-6 and 20 - 1e-6 <= y <= 60 + 1e-6 for x, y in points)


def test_a_hatch_rises_to_the_right_on_the_page():
    (x1, y1), (x2, y2) = hatched(box(0, 0, 100, 100), angle=45, apart=30)[0].points
    assert (x2 - x1) * (y2 - y1) < 0


def test_the_lines_of_a_hatch_lie_apart_as_asked():
    lines = hatched(box(0, 0, 100, 50), angle=90, apart=5)
    xs = sorted(line.points[0][0] for line in lines)
    assert [round(b - a, 6) for a, b in itertools.pairwise(xs)] == [5.0] * (len(xs) - 1)


def test_moving_moves_every_kind_of_item():
    items = (Line(((0, 0), (1, 1))), Ellipse(2, 2, 1, 1), Text(3, 3, "a"))
    line, ellipse, text = moved(items, 10, 20)
    assert line.points == ((10, 20), (11, 21))
    assert (ellipse.x, ellipse.y, text.x, text.y) == (12, 22, 13, 23)


def test_an_arrow_ends_at_its_tip():
    line, head = arrow((0, 0), (20, 0), head=6)
    assert head.points[0] == (20, 0)
    assert line.points[1][0] < 20


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
