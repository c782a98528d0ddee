"""A title that is typed into: as wide as its words, and the part that was typed has a line under it."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRect
from PySide6.QtGui import QColor, QImage, QPainter

from jobsheet.gui.choosing.taken_words import write_hit
from jobsheet.gui.ink import look


def _written(text, hit, width=300):
    look.apply("light")
    image = QImage(320, 30, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    with QPainter(image) as painter:
        wide = write_hit(painter, QRect(0, 0, width, 30), text, hit)
    return image, wide


def _more(one, other):
    return {(x, y) for x in range(320) for y in range(30) if one.pixel(x, y) != other.pixel(x, y)}


def test_the_line_stands_under_the_letters_that_were_typed(qapp):
    plain, wide = _written("end mill", (0, 0))
    under, same = _written("end mill", (4, 8))
    now = look.look()
    assert wide == same == now.width("end mill", now.bold)
    columns = {x for x, _ in _more(under, plain)}
    assert columns
    assert min(columns) >= now.width("end ", now.bold) - 2
    assert max(columns) <= wide + 2


@pytest.mark.parametrize("hit", [(3, 3), (5, 2)])
def test_a_hit_without_letters_has_no_line(qapp, hit):
    assert not _more(_written("end mill", hit)[0], _written("end mill", (0, 0))[0])


def test_where_there_is_no_room_the_line_ends_with_the_words(qapp):
    under, wide = _written("face mill 50 mm, 4 teeth", (0, 24), width=60)
    plain, _ = _written("face mill 50 mm, 4 teeth", (0, 0), width=60)
    assert wide <= 60
    assert max(x for x, _ in _more(under, plain)) <= 62
