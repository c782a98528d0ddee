"""The stage strip: fixed views of the work after each step, the one of the open row wider."""

from __future__ import annotations

import math

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QPointF, QRect, QRectF, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPainterPath, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QAbstractButton, QWidget

from jobsheet.drawing.drawn import Drawing
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.bar_painter import hatch
from jobsheet.gui.ink.look import Look, look
from jobsheet.gui.strip.sketch import Size, Sketch, Stroke
from jobsheet.gui.strip.stage_blocks import Stage
from jobsheet.units.show import trimmed

CELL = 120
#: Features on the large drawing: place, reach, key of the step.
Spots = tuple[tuple[float, float, float, str], ...]
CURRENT = 2.4
#: Drawings before and after the current one where it is narrow.
BESIDE = 2

translate = QCoreApplication.translate


class StageCell(QAbstractButton):
    """One drawing; pressing it opens its row."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.stage: Stage | None = None
        self.current = False
        self._picture: Sketch | None = None
        self._drawing: Drawing | None = None
        self._pressed_at: QPointF | None = None
        self.moment = "after"
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)

    def put(self, stage: Stage, *, current: bool) -> None:
        """Show a stage."""
        if stage != self.stage or current != self.current:
            self.stage, self.current = stage, current
            self._picture = stage.picture()
            self.setAccessibleName(stage.spoken)
            self.setToolTip(stage.spoken)
            self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Remember where it was pressed: a feature there opens its own step."""
        self._pressed_at = event.position()
        super().mousePressEvent(event)

    def feature_at(self, spots: Spots) -> str:
        """The key of the step whose feature was pressed in the large drawing; nothing elsewhere."""
        if self._drawing is None or not self.current or self._pressed_at is None:
            return ""
        left, top, factor = _place_of(look(), self._room(), self._drawing)
        x, y = (self._pressed_at.x() - left) / factor, (self._pressed_at.y() - top) / factor
        near = [(math.hypot(x - u, y - v) / reach, key) for u, v, reach, key in spots]
        best = [key for share, key in near if share <= 1.0]
        return best[0] if best else ""

    def draw(self, drawing: Drawing | None) -> None:
        """The picture from the solid, which takes the place of the sketch as soon as it is there."""
        if drawing is not self._drawing:
            self._drawing = drawing
            self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The drawing, its caption and, under the current one, a blue foot."""
        now, stage = look(), self.stage
        if stage is None or self._picture is None:
            return
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("field" if self.current else "paper"))
            foot = now.px(26)
            room = self._room()
            if self._drawing is not None:
                _paint_drawing(painter, now, room, self._drawing)
            else:
                paint_sketch(painter, now, room, self._picture, detailed=self.current)
            self._paint_caption(painter, now, stage, foot)
            ink.upright(painter, now.colour("rule"), self.width() - 1, 0, self.height())
            if self.current:
                high = now.px(4)
                painter.fillRect(QRect(0, self.height() - high, self.width(), high), now.colour("bluemark"))

    def _room(self) -> QRectF:
        """Where the drawing stands."""
        now = look()
        room = QRectF(self.rect()).adjusted(now.px(20), now.px(16), -now.px(20), -now.px(34))
        if not self.current:
            spare = max(0.0, room.width() - now.px(92))
            room.adjust(spare / 2, now.px(4), -spare / 2, 0)
        return room

    def _paint_caption(self, painter: QPainter, now: Look, stage: Stage, foot: int) -> None:
        """`after` in pencil and the number in ink; the current one says what its lines mean."""
        caption = stage.caption
        if self.current and stage.key:
            caption = {
                "before": translate("Strip", "before"), "stock": translate("Strip", "stock, for")
            }.get(self.moment, caption)  # fmt: skip
        parts = [
            (f"{caption} ".lstrip(), now.caption, "pencil"),
            (stage.number, now.caption_bold, "ink"),
        ]
        if self.current and self.moment == "after" and self.width() / now.scale > 280:
            parts.append((translate("Strip", ", heavy: cut now, dashed: removed"), now.caption, "pencil"))
        wide = sum(now.width(text, font) for text, font, _ in parts)
        left = (self.width() - wide) // 2
        for text, font, token in parts:
            place = QRect(left, self.height() - foot, now.width(text, font) + 1, now.px(18))
            left += ink.write(painter, now, place, text, font, token)


def _paint_drawing(painter: QPainter, now: Look, room: QRectF, drawing: Drawing) -> None:
    """In the middle of its room, as large as it was drawn or smaller."""
    from jobsheet.gui.ink.drawn_lines import SCALE, paint

    left, top, factor = _place_of(now, room, drawing)
    paint(painter, now, drawing, left, top, factor / (SCALE * now.scale))


def _place_of(now: Look, room: QRectF, drawing: Drawing) -> tuple[float, float, float]:
    """Left and top of a drawing in its room, and pixels to one of its points."""
    from jobsheet.gui.ink.drawn_lines import SCALE

    one = SCALE * now.scale
    scale = min(room.width() / (drawing.width * one), room.height() / (drawing.height * one), 1.0)
    left = room.center().x() - drawing.width * one * scale / 2
    top = room.center().y() - drawing.height * one * scale / 2
    return left, top, one * scale


def paint_sketch(painter: QPainter, now: Look, room: QRectF, picture: Sketch, *, detailed: bool) -> None:
    """The strokes of a stage, as large as the room allows."""
    left, top, right, bottom = picture.box
    scale = min(room.width() / max(right - left, 1e-9), room.height() / max(bottom - top, 1e-9))
    x0 = room.center().x() - (left + right) / 2 * scale
    y0 = room.center().y() - (top + bottom) / 2 * scale
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for stroke in picture.strokes:
        shape = QPolygonF([QPointF(x0 + x * scale, y0 + y * scale) for x, y in stroke.points])
        _paint_stroke(painter, now, stroke, shape, detailed=detailed)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
    if detailed:
        for size in picture.sizes:
            _paint_size(painter, now, QPointF(x0 + size.at[0] * scale, y0 + size.at[1] * scale), size)


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


class Strip(QWidget):
    """The drawings side by side; as many as fit, the current one always among them."""

    pressed = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("Strip", "The work after each step"))
        self._cells: list[StageCell] = []
        self._stages: list[Stage] = []
        self._current = ""
        self._drawings: dict[str, Drawing] = {}
        self.spots: Spots = ()
        #: How often the large one has changed.
        self.turn = 0
        #: The large drawing shows the work `after` its step, `before` it, or the `stock`.
        self.moment = "after"

    def put(self, stages: list[Stage], current: str) -> None:
        """Show these stages; `current` is the key of the open or chosen row."""
        if self._current != current:
            # What was large is small now, and the other way round: both are drawn anew.
            self.turn += 1
            for key in (self._current, current):
                self._drawings.pop(key, None)
        self._stages, self._current = stages, current
        self._arrange()

    def draw(self, drawings: dict[str, Drawing], spots: Spots | None = None) -> None:
        """Show these drawings, by the key of their stage; the empty key is the stock. `spots` are features of the large one."""
        # What is not answered yet keeps its last drawing: nothing flickers between sketch and picture.
        self._drawings = {**self._drawings, **drawings}
        if spots is not None:
            self.spots = spots
        self._arrange()

    def shown(self) -> tuple[str, ...]:
        """The keys of the stages that fit, in their order."""
        return tuple(cell.stage.key for cell in self._cells if not cell.isHidden() and cell.stage is not None)

    @property
    def current(self) -> str:
        """The key of the large one."""
        return self._current

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Choose again which fit."""
        self._arrange()

    def _window(self, count: int) -> tuple[int, int]:
        """Which stages are shown: a run of so many around the current one."""
        total = len(self._stages)
        place = next((i for i, stage in enumerate(self._stages) if stage.key == self._current), 0)
        first = min(max(0, place - count // 2), max(0, total - count))
        return first, min(total, first + count)

    def _arrange(self) -> None:
        """Place the cells that fit."""
        now = look()
        form = now.form(self.width() + now.px(18))
        fit = max(1, int((self.width() / now.px(CELL)) - CURRENT + 1))
        if form != "wide":
            fit = min(fit, 2 * BESIDE + 1)
        first, last = self._window(fit)
        shown = self._stages[first:last]
        while len(self._cells) < len(shown):
            cell = StageCell(self)
            cell.clicked.connect(self._clicked)
            self._cells.append(cell)
        weights = [CURRENT if stage.key == self._current else 1.0 for stage in shown]
        total = sum(weights)
        one = min(self.width() / total if total else 0, now.px(CELL * 2))
        left = 0.0
        for index, cell in enumerate(self._cells):
            cell.setVisible(index < len(shown))
            if index < len(shown):
                wide = one * weights[index]
                cell.setGeometry(round(left), 1, round(left + wide) - round(left), self.height() - 2)
                cell.moment = self.moment
                cell.put(shown[index], current=shown[index].key == self._current)
                cell.draw(self._drawings.get(shown[index].key))
                left += wide

    def _clicked(self) -> None:
        """Tell which drawing was pressed."""
        cell = self.sender()
        if isinstance(cell, StageCell) and cell.stage is not None and cell.stage.key:
            self.pressed.emit(cell.feature_at(self.spots) or cell.stage.key)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper with a hairline round it."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            painter.setPen(now.colour("rule"))
            painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
