"""Icons and inks of one look."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRect, QRectF
from PySide6.QtGui import QImage, QPainter

from jobsheet.gui.ink import ink, look


@pytest.fixture(params=[1.0, 1.25, 1.5])
def now(request, qapp):
    return look.apply("light", factor=request.param)


def painted(paint):
    """A picture of what is painted."""
    picture = QImage(400, 80, QImage.Format.Format_ARGB32_Premultiplied)
    picture.fill(look.look().colour("paper"))
    with QPainter(picture) as painter:
        paint(painter)
    return picture


def test_boxes_are_the_toolkits_to_the_pixel(now):
    colour, line = now.colour("chosen"), now.colour("edge")
    box = QRect(11, 9, 200, 40)
    shape = QRectF(box).adjusted(0.5, 0.5, -0.5, -0.5)

    def with_pen(painter):
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(colour)
        painter.setBrush(colour)
        painter.drawRoundedRect(shape, 3, 3)

    def rounded(painter):
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink.rounded(painter, shape, 3, colour)

    def framed(painter):
        painter.setPen(line)
        painter.drawRect(box.adjusted(0, 0, -1, -1))

    assert painted(lambda p: ink.frame(p, box, line)) == painted(framed)
    assert painted(rounded) == painted(with_pen)
