"""Paints neutral drawings in the window: the same lines and words that the sheet
prints, in the tokens of the look.
"""

from __future__ import annotations

import math

from PySide6 import QtCore
from PySide6.QtCore import QPointF
from PySide6.QtGui import QBrush, QPainter, QPen, QPolygonF

from jobsheet.drawing.drawn import DASHES, WEIGHTS, Drawing, Ellipse, Line, Text
from jobsheet.gui.ink.look import Look

#: A point of the drawing at 100 % [px]: type of 8 points becomes the look's caption of 11 px.
SCALE = 11 / 8
#: On a screen what is cut now is drawn a little lighter than on paper, and no line
#: thinner than can be seen [points].
_LIGHTER = {"cut": 2.0, "thin": 0.6}
_FONTS = {"caption": "caption", "small": "caption", "note": "caption", "size": "label", "label": "label"}
_FONTS |= {
    "strong": "caption_bold",
    "label bold": "bold",
    "mark": "caption_bold",
    "note bold": "caption_bold",
}
_FONTS |= {"head": "head", "body": "body", "title": "title"}
_PENCIL = ("caption", "small", "note")
#: Grounds and tones that a drawing names, by the look's tokens.
_TOKENS = {"paper": "field"}


def paint(
    painter: QPainter, now: Look, drawing: Drawing, left: float, top: float, scale: float = 1.0
) -> None:
    """Put a drawing with its upper left corner at a place of the widget; `scale` beside that of the look."""
    factor = SCALE * now.scale * scale
    painter.save()
    painter.translate(left, top)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for item in drawing.items:
        if isinstance(item, Line):
            _line(painter, now, item, factor)
        elif isinstance(item, Ellipse):
            _ellipse(painter, now, item, factor)
        elif isinstance(item, Text):
            _text(painter, now, item, factor)
    painter.restore()


def _pens(painter: QPainter, now: Look, item: Line | Ellipse, factor: float) -> None:
    wide = _LIGHTER.get(item.weight, WEIGHTS[item.weight]) if isinstance(item.weight, str) else item.weight
    if wide <= 0:
        painter.setPen(QtCore.Qt.PenStyle.NoPen)
    else:
        width = max(wide * factor, 1.0)
        pen = QPen(now.colour(_TOKENS.get(item.ink, item.ink)), width)
        pen.setCapStyle(QtCore.Qt.PenCapStyle.FlatCap)
        pen.setJoinStyle(QtCore.Qt.PenJoinStyle.MiterJoin)
        if item.dash:
            pen.setDashPattern([part * factor / width for part in DASHES[item.dash]])
        painter.setPen(pen)
    fill = now.colour(_TOKENS.get(item.fill, item.fill)) if item.fill else None
    painter.setBrush(QBrush(fill) if fill is not None else QtCore.Qt.BrushStyle.NoBrush)


def _line(painter: QPainter, now: Look, item: Line, factor: float) -> None:
    _pens(painter, now, item, factor)
    points = QPolygonF([QPointF(x * factor, y * factor) for x, y in item.points])
    if item.closed:
        painter.drawPolygon(points)
    else:
        painter.drawPolyline(points)


def _ellipse(painter: QPainter, now: Look, item: Ellipse, factor: float) -> None:
    _pens(painter, now, item, factor)
    painter.save()
    painter.translate(item.x * factor, item.y * factor)
    painter.rotate(math.degrees(item.turn))
    painter.drawEllipse(QPointF(0, 0), item.a * factor, item.b * factor)
    painter.restore()


def _text(painter: QPainter, now: Look, item: Text, factor: float) -> None:
    font = getattr(now, _FONTS.get(item.style, "label"))
    token = _TOKENS.get(item.ink, item.ink) or ("pencil" if item.style in _PENCIL else "ink")
    painter.setFont(font)
    painter.setPen(now.colour(token))
    shift = {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor]
    x = item.x * factor - shift * now.width(item.words, font)
    painter.drawText(QPointF(x, item.y * factor), item.words)
