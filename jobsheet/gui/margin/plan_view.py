"""The places of the open step from above: the work as it lies, its zero, the walk from
place to place, the one in hand blue.
"""

from __future__ import annotations

from itertools import pairwise

from msgspec import Struct
from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QPointF, QRect, QRectF
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import Look, look

HIGH, SIDE, DOT = 128, 26, 5
#: More numbers than this would stand on each other.
NUMBERED = 24
translate = QCoreApplication.translate


class Plan(Struct, frozen=True):
    """The work from above [m]: its size, its zero and its places from the left
    front corner, in the order of walking.
    """

    length: float
    width: float
    zero: tuple[float, float]
    points: tuple[tuple[float, float], ...]


class PlanView(QWidget):
    """A picture without controls; the rows say the same in words."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.plan: Plan | None = None
        self.chosen = -1
        self.setAccessibleName(translate("Plan", "The places from above"))

    def put(self, plan: Plan | None) -> bool:
        """Show these places; whether the picture came or went."""
        if plan == self.plan:
            return False
        came = (plan is None) != (self.plan is None)
        self.plan = plan
        self.update()
        return came

    def choose(self, place: int) -> None:
        """The place in hand, from nought; less for none."""
        if place != self.chosen:
            self.chosen = place
            self.update()

    def arrange(self, width: int) -> int:
        """The height that it needs."""
        return look().px(HIGH) if self.plan is not None and width > 0 else 0

    def spots(self) -> list[QPointF]:
        """Where the places are painted."""
        if self.plan is None:
            return []
        left, front, scale = self._scaled(self.plan)
        return [QPointF(left + x * scale, front - y * scale) for x, y in self.plan.points]

    def _scaled(self, plan: Plan) -> tuple[float, float, float]:
        """The left front corner of the work, and pixels to a metre: a place beside the work is shown too."""
        now = look()
        xs = [0.0, plan.length, plan.zero[0], *(x for x, _ in plan.points)]
        ys = [0.0, plan.width, plan.zero[1], *(y for _, y in plan.points)]
        room = QRectF(self.rect()).adjusted(now.px(SIDE), now.px(14), -now.px(SIDE), -now.px(14))
        wide, deep = max(xs) - min(xs), max(ys) - min(ys)
        scale = min(room.width() / max(wide, 1e-9), room.height() / max(deep, 1e-9))
        left = room.left() - min(xs) * scale
        return left, room.center().y() + (max(ys) + min(ys)) / 2 * scale, scale

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Outline, zero, walk, places."""
        if self.plan is None:
            return
        now, plan = look(), self.plan
        left, front, scale = self._scaled(plan)
        with QPainter(self) as painter:
            work = QRectF(left, front - plan.width * scale, plan.length * scale, plan.width * scale)
            painter.setPen(QPen(now.colour("ink"), 1.2 * now.scale))
            painter.drawRect(work)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            zero = QPointF(left + plan.zero[0] * scale, front - plan.zero[1] * scale)
            _cross(painter, now, zero, now.px(6))
            painter.drawEllipse(zero, now.px(4), now.px(4))
            spots = self.spots()
            walk = QPen(now.colour("pencil"), now.scale)
            walk.setDashPattern([4, 3])
            painter.setPen(walk)
            for point_f, other in pairwise(spots):
                painter.drawLine(point_f, other)
            for number, spot in enumerate(spots):
                self._paint_place(painter, now, number, spot)

    def _paint_place(self, painter: QPainter, now: Look, number: int, spot: QPointF) -> None:
        """A ring with its number; heavier and blue where the cursor is in its row."""
        here = number == self.chosen
        painter.setPen(QPen(now.colour("bluemark" if here else "ink"), now.px(3 if here else 1)))
        painter.setBrush(now.colour("field"))
        size = now.px(DOT + (2 if here else 0))
        painter.drawEllipse(spot, size, size)
        painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
        if here or (self.plan is not None and len(self.plan.points) <= NUMBERED):
            place = QRect(round(spot.x()) + now.px(6), round(spot.y()) - now.px(19), now.px(34), now.px(14))
            font = now.caption_bold if here else now.caption
            ink.write(painter, now, place, str(number + 1), font, "blue" if here else "ink")


def _cross(painter: QPainter, now: Look, at: QPointF, size: int) -> None:
    painter.setPen(QPen(now.colour("ink"), now.scale))
    painter.drawLine(at - QPointF(size, 0), at + QPointF(size, 0))
    painter.drawLine(at - QPointF(0, size), at + QPointF(0, size))
