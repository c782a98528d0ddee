"""Paints the quick sketch of a stage: blocks as lines, and the sizes of the step."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QPointF, QRect, QRectF
from PySide6.QtGui import QPainter, QPainterPath, QPen, QPolygonF

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.bar_painter import hatch
from jobsheet.gui.ink.look import Look
from jobsheet.gui.strip.sketch_values import Block, Size, Sketch, Stroke, seen
from jobsheet.units.show import trimmed

translate = QCoreApplication.translate


def paint_sketch(painter: QPainter, now: Look, room: QRectF, picture: Sketch, *, detailed: bool) -> None:
    """The strokes of a stage, as large as the room allows."""
    x0, y0, scale = _placed(room, picture)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for stroke in picture.strokes:
        shape = QPolygonF([QPointF(x0 + x * scale, y0 + y * scale) for x, y in stroke.points])
        _paint_stroke(painter, now, stroke, shape, detailed=detailed)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
    if detailed:
        for size in picture.sizes:
            _paint_size(painter, now, QPointF(x0 + size.at[0] * scale, y0 + size.at[1] * scale), size)


def _placed(room: QRectF, picture: Sketch) -> tuple[float, float, float]:
    """Where the picture's own nought lies in its room, and pixels to a metre."""
    left, top, right, bottom = picture.box
    scale = min(room.width() / max(right - left, 1e-9), room.height() / max(bottom - top, 1e-9))
    x0 = room.center().x() - (left + right) / 2 * scale
    return x0, room.center().y() - (top + bottom) / 2 * scale, scale


def ring_of(
    before: Block, after: Block, picture: Sketch, room: QRectF, place: int
) -> tuple[float, float, float] | None:
    """Middle and radius of one of the holes that a step cuts, in their order [px]."""
    new = after.holes[len(before.holes) :]
    if not 0 <= place < len(new):
        return None
    x0, y0, scale = _placed(room, picture)
    x, y = seen(new[place].x, new[place].y, after.height)
    return x0 + x * scale, y0 + y * scale, new[place].diameter / 2 * scale


def _paint_size(painter: QPainter, now: Look, at: QPointF, size: Size) -> None:
    """A leader to the right and the size at its end."""
    number = trimmed(size.value * 1e3, 2)
    words = translate("Strip", "⌀ {size}").format(size=number) if size.round else number
    painter.setPen(QPen(now.colour("pencil"), 1))
    elbow = QPointF(at.x() + now.px(14), at.y() - now.px(14))
    if size.round:
        painter.drawLine(at, elbow)
    else:
        elbow = QPointF(at.x() + now.px(12), at.y())
        painter.drawLine(at + QPointF(now.px(3), 0), elbow)
    wide = now.width(words, now.body) + now.px(4)
    place = QRect(round(elbow.x()) + now.px(4), round(elbow.y()) - now.px(9), wide, now.px(18))
    ink.write(painter, now, place, words, now.body)


def _paint_stroke(painter: QPainter, now: Look, stroke: Stroke, shape: QPolygonF, *, detailed: bool) -> None:
    """One stroke in its manner."""
    if stroke.line == "dashed":
        if not detailed:
            return
        pen = QPen(now.colour("pencil"), 1.1 * now.scale)
        pen.setDashPattern([4, 2.5])
    elif stroke.line == "heavy":
        box = shape.boundingRect()
        thick = (3.0 if detailed else 2.2) * now.scale
        pen = QPen(now.colour("ink"), min(thick, max(1.4 * now.scale, 0.25 * box.height())))
    else:
        pen = QPen(now.colour("ink"), 1.2 * now.scale)
    pen.setJoinStyle(QtCore.Qt.PenJoinStyle.RoundJoin)
    if stroke.filled:
        path = QPainterPath()
        path.addPolygon(shape)
        path.closeSubpath()
        painter.fillPath(path, now.colour("field"))
        if stroke.hatched and detailed:
            painter.save()
            painter.setClipPath(path)
            hatch(painter, shape.boundingRect(), 45, now.scale, 7 * now.scale, now.colour("pencil"))
            painter.restore()
    painter.setPen(pen)
    painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
    if stroke.closed:
        painter.drawPolygon(shape)
    else:
        painter.drawPolyline(shape)
