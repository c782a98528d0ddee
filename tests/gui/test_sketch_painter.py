"""The quick sketch is painted as large as its room allows, and a ring can be found again on it."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from jobsheet.gui.ink import look
from jobsheet.gui.strip.sketch import cut, sketch
from jobsheet.gui.strip.sketch_painter import paint_sketch, ring_of
from jobsheet.gui.strip.sketch_values import Block
from jobsheet.model.shape import Hole, Slab

PLATE = Block(0.08, 0.05, 0.012)
ROOM = QRectF(20, 10, 160, 100)


def _inks(picture, *, detailed):
    look.apply("light")
    image = QImage(260, 120, QImage.Format.Format_RGB32)
    image.fill(QColor("#ff00ff"))
    with QPainter(image) as painter:
        paint_sketch(painter, look.look(), ROOM, picture, detailed=detailed)
    return {(x, y) for x in range(260) for y in range(120) if image.pixelColor(x, y) != QColor("#ff00ff")}


def test_it_fills_its_room_one_way_and_stays_in_it(qapp):
    marked = _inks(sketch(PLATE, PLATE, now=False), detailed=False)
    xs, ys = [x for x, _ in marked], [y for _, y in marked]
    assert (min(xs) <= 22 and max(xs) >= 177) or (min(ys) <= 12 and max(ys) >= 107)
    assert min(xs) >= 18
    assert max(xs) <= 182
    assert min(ys) >= 8
    assert max(ys) <= 112


def test_in_detail_it_has_its_sizes_too(qapp):
    picture = sketch(PLATE, cut(PLATE, (Slab(0.002),)))
    assert len(_inks(picture, detailed=True)) > len(_inks(picture, detailed=False))


def test_the_rings_of_a_step_are_found_in_their_order():
    old, first, second = (Hole(x, 0.025, 0.006, None) for x in (0.01, 0.03, 0.06))
    before = cut(PLATE, (old,))
    after = cut(before, (first, second))
    picture = sketch(before, after)
    one, other = (ring_of(before, after, picture, ROOM, place) for place in (0, 1))
    assert one[0] < other[0]
    assert one[2] == other[2] > 0
    assert ROOM.contains(one[0], one[1])
    assert ring_of(before, after, picture, ROOM, 2) is None
    assert ring_of(before, after, picture, ROOM, -1) is None


@pytest.mark.parametrize("factor", [1, 2])
def test_a_room_twice_as_large_has_rings_twice_as_large(factor):
    after = cut(PLATE, (Hole(0.01, 0.01, 0.006, None),))
    room = QRectF(0, 0, 100 * factor, 100 * factor)
    assert ring_of(PLATE, after, sketch(PLATE, after), room, 0)[2] == pytest.approx(
        factor * ring_of(PLATE, after, sketch(PLATE, after), QRectF(0, 0, 100, 100), 0)[2]
    )
