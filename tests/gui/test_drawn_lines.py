"""Neutral drawings are painted in the tokens of the look, at their place and in their size."""

from __future__ import annotations

import pytest
from PySide6.QtGui import QColor, QImage, QPainter

from jobsheet.drawing.drawn import Drawing, Ellipse, Line, Text
from jobsheet.gui.ink import look
from jobsheet.gui.ink.drawn_lines import SCALE, paint

GROUND = QColor("#ff00ff")


def _marked(*items, left=0.0, top=0.0, scale=1.0, scheme="light"):
    look.apply(scheme)
    image = QImage(200, 200, QImage.Format.Format_RGB32)
    image.fill(GROUND)
    with QPainter(image) as painter:
        paint(painter, look.look(), Drawing(100, 100, items), left, top, scale)
    look.apply("light")
    return image, {(x, y) for x in range(200) for y in range(200) if image.pixelColor(x, y) != GROUND}


def test_a_line_stands_where_it_was_put_and_grows_with_its_scale(qapp):
    line = Line(((0.0, 10.0), (40.0, 10.0)))
    _, usual = _marked(line, left=20, top=30)
    assert {y for _, y in usual} <= set(range(round(30 + 10 * SCALE) - 2, round(30 + 10 * SCALE) + 3))
    assert max(x for x, _ in usual) == pytest.approx(20 + 40 * SCALE, abs=2)
    _, double = _marked(line, left=20, top=30, scale=2.0)
    assert max(x for x, _ in double) == pytest.approx(20 + 80 * SCALE, abs=2)


def test_a_filled_one_takes_its_ground_from_the_look(qapp):
    square = Line(((10.0, 10.0), (50.0, 10.0), (50.0, 50.0), (10.0, 50.0)), closed=True, fill="paper")
    for scheme in ("light", "dark"):
        image, _ = _marked(square, scheme=scheme)
        look.apply(scheme)
        assert image.pixelColor(round(30 * SCALE), round(30 * SCALE)) == look.look().colour("field")
    look.apply("light")


def test_an_ellipse_reaches_as_far_as_its_axes(qapp):
    _, marked = _marked(Ellipse(60.0, 60.0, 40.0, 20.0))
    xs, ys = [x for x, _ in marked], [y for _, y in marked]
    assert max(xs) - min(xs) == pytest.approx(80 * SCALE, abs=4)
    assert max(ys) - min(ys) == pytest.approx(40 * SCALE, abs=4)


@pytest.mark.parametrize(("anchor", "side"), [("start", 1), ("end", -1), ("middle", 0)])
def test_words_stand_to_their_side_of_the_place(qapp, anchor, side):
    _, marked = _marked(Text(70.0, 70.0, "12.5", anchor=anchor))
    middle = (max(x for x, _ in marked) + min(x for x, _ in marked)) / 2 - 70 * SCALE
    assert (middle > 5) == (side > 0)
    assert (middle < -5) == (side < 0)


def test_an_empty_drawing_paints_nothing(qapp):
    assert _marked()[1] == set()
