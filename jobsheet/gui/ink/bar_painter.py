"""The share bar: how much of a capacity a cut asks for, drawn towards one fence.

Every bar of a margin has the same scale: nought at the left, the fence (the capacity) at 0.74 of the
width, and the right end at 1.35 of it, so that the distance to the fence is what one reads. The pattern
of the bar says the verdict again, so that it can be read in grey.
"""

from __future__ import annotations

import math

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QLineF, QPointF, QRect, QRectF
from PySide6.QtGui import QColor, QPainter, QPen, QPolygonF

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import Look
from jobsheet.gui.ink.tokens import VERDICTS
from jobsheet.model.figure import Limit

FENCE = 0.74
END = 1.35
HIGH = 11
HIGH_GOVERNING = 20
#: Verdict -> (angle of the lines, thickness, distance) at 100 %.
_PATTERNS = {
    "expected": ((45.0,), 1.1, 7.0),
    "tight": ((90.0,), 2.0, 4.0),
    "beyond": ((45.0, 135.0), 1.7, 6.0),
}


def paint_share_bar(
    painter: QPainter, look: Look, rect: QRect, limit: Limit, *, governs: bool = False
) -> None:
    """One bar in its box; `governs` makes it taller, never longer."""
    high = look.px(HIGH_GOVERNING if governs else HIGH)
    base = rect.center().y() + high / 2
    top = base - high
    painter.save()
    painter.setClipRect(rect.adjusted(0, 0, 1, 0))
    if limit.capacity <= 0:
        _paint_unknown(painter, look, rect, top, base)
        painter.restore()
        return
    fence = rect.left() + FENCE * rect.width()
    _paint_band(painter, look, rect, limit, top, base)
    ink.horizontal(painter, look.colour("edge"), rect.left(), rect.right(), base)
    demand = rect.left() + min(limit.share, END) * FENCE * rect.width()
    bar = QRectF(rect.left(), top, max(demand - rect.left(), look.px(2)), high)
    _paint_bar(painter, look, bar, limit.verdict, torn=limit.share > END)
    _paint_fence(painter, look, fence, top, base, learned=limit.learned or limit.low == limit.high)
    _paint_evidence(painter, look, rect, limit, base)
    painter.restore()


def _paint_band(painter: QPainter, look: Look, rect: QRect, limit: Limit, top: float, base: float) -> None:
    """Where the capacity lies nine times in ten."""
    scale = FENCE * rect.width() / limit.capacity
    left, right = rect.left() + limit.low * scale, rect.left() + limit.high * scale
    if right - left < 1:
        return
    shown = min(right, rect.right())
    out = look.px(3)
    painter.fillRect(QRectF(left, top - out, shown - left, base - top + 2 * out), look.colour("band"))
    edge = look.colour("bluemark")
    ink.upright(painter, edge, left, top - out, base + out)
    if right <= rect.right():
        ink.upright(painter, edge, shown - 1, top - out, base + out)


def _paint_bar(painter: QPainter, look: Look, bar: QRectF, verdict: str, *, torn: bool) -> None:
    """The demand: outline and pattern of its verdict."""
    colour = look.colour(VERDICTS.get(verdict, VERDICTS["expected"])[2])
    if verdict == "cut before":
        painter.fillRect(bar, colour)
        return
    painter.fillRect(bar, look.colour("field"))
    angles, thick, apart = _PATTERNS.get(verdict, ((), 0.0, 1.0))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for angle in angles:
        hatch(painter, bar, angle, thick * look.scale, apart * look.scale, colour)
    pen = QPen(colour, 1.3 * look.scale)
    if verdict == "not tried":
        pen.setDashPattern([3, 2])
    painter.setPen(pen)
    painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
    outline = bar.adjusted(0.65, 0.65, -0.65, -0.65)
    if torn:
        third = bar.height() / 3
        painter.drawPolyline(
            QPolygonF(
                [
                    outline.topRight(),
                    outline.topLeft(),
                    outline.bottomLeft(),
                    outline.bottomRight(),
                    QPointF(outline.right() - look.px(3), outline.bottom() - third),
                    QPointF(outline.right(), outline.bottom() - 2 * third),
                    outline.topRight(),
                ]
            )
        )
    else:
        painter.drawRect(outline)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)


def hatch(painter: QPainter, area: QRectF, angle: float, thick: float, apart: float, colour: QColor) -> None:
    """Parallel lines over an area, at a distance measured across them."""
    painter.save()
    painter.setClipRect(area, QtCore.Qt.ClipOperation.IntersectClip)
    painter.setPen(QPen(colour, thick))
    lean = math.cos(math.radians(angle)) / math.sin(math.radians(angle)) * area.height()
    step = apart / math.sin(math.radians(angle))
    x = area.left() - abs(lean) + step / 2
    lines = []
    while x < area.right() + abs(lean):
        lines.append(QLineF(x, area.bottom(), x + lean, area.top()))
        x += step
    painter.drawLines(lines)
    painter.restore()


def _paint_fence(painter: QPainter, look: Look, x: float, top: float, base: float, *, learned: bool) -> None:
    """The capacity: dashed while it is the card's word, solid when it is known or trials have moved it."""
    pen = QPen(look.colour("ink"), (2.6 if learned else 1.6) * look.scale)
    pen.setCapStyle(QtCore.Qt.PenCapStyle.FlatCap)
    if not learned:
        pen.setDashPattern([2.5, 1.5])
    painter.setPen(pen)
    out = look.px(6)
    painter.drawLine(QLineF(x, top - out, x, base + out))


def _paint_evidence(painter: QPainter, look: Look, rect: QRect, limit: Limit, base: float) -> None:
    """Under the base line what was tried: a dot for each clean cut, a cross for
    each bad one, at the share it asked.
    """
    if not limit.evidence:
        return
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    colour, far = look.colour("ink"), look.px(2)
    y = base + look.px(4)
    for share, clean in limit.evidence:
        if share > END:
            continue
        x = rect.left() + share * FENCE * rect.width()
        if clean:
            painter.setPen(QtCore.Qt.PenStyle.NoPen)
            painter.setBrush(colour)
            painter.drawEllipse(QPointF(x, y), far, far)
        else:
            painter.setPen(QPen(colour, 1.3 * look.scale))
            painter.drawLine(QLineF(x - far, y - far, x + far, y + far))
            painter.drawLine(QLineF(x - far, y + far, x + far, y - far))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)


def _paint_unknown(painter: QPainter, look: Look, rect: QRect, top: float, base: float) -> None:
    """No fence and no band: an empty outline and the words."""
    ink.horizontal(painter, look.colour("edge"), rect.left(), rect.right(), base)
    pen = QPen(look.colour("pencil"), 1.3 * look.scale)
    pen.setDashPattern([3, 2])
    painter.setPen(pen)
    words = not_known()
    room = look.width(words, look.caption) + look.px(8)
    width = max(rect.width() - room, look.px(16))
    painter.drawRect(QRectF(rect.left() + 0.5, top + 0.5, width, base - top - 1))
    place = QRect(rect.left() + int(width) + look.px(5), int(top), room, int(base - top))
    ink.write(painter, look, place, words, look.caption, "pencil")


def not_known() -> str:
    """What a limit says of which nothing is known, not even by class."""
    return QCoreApplication.translate("ShareBar", "try first")
