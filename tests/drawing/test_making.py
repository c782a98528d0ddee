"""Boxes, arrows and hatching of lines, and drawings moved."""

from __future__ import annotations

import itertools

from jobsheet.drawing.drawn import Ellipse, Line, Text
from jobsheet.drawing.making import arrow, box, hatched, moved


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


def test_an_arrow_ends_at_its_tip():
    line, head = arrow((0, 0), (20, 0), head=6)
    assert head.points[0] == (20, 0)
    assert line.points[1][0] < 20


def test_moving_moves_every_kind_of_item():
    items = (Line(((0, 0), (1, 1))), Ellipse(2, 2, 1, 1), Text(3, 3, "a"))
    line, ellipse, text = moved(items, 10, 20)
    assert line.points == ((10, 20), (11, 21))
    assert (ellipse.x, ellipse.y, text.x, text.y) == (12, 22, 13, 23)
