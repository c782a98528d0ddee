"""One drawing of the strip: a stage with its caption, and the feature under the mouse."""

from __future__ import annotations

import math

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QPointF, QRect, QRectF
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from jobsheet.drawing.drawn import Drawing
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.forms.pressable import Pressable
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import Look, look
from jobsheet.gui.strip.sketch_painter import paint_sketch, ring_of
from jobsheet.gui.strip.sketch_values import Sketch
from jobsheet.gui.strip.stage_blocks import Stage

translate = QCoreApplication.translate


#: Features on the large drawing: place, reach, key of the step.
Spots = tuple[tuple[float, float, float, str], ...]


CURRENT = 2.4


class StageCell(Pressable):
    """One drawing; pressing it opens its row."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.stage: Stage | None = None
        self.current = False
        self._picture: Sketch | None = None
        self._drawing: Drawing | None = None
        self._pressed_at: QPointF | None = None
        self.moment = "after"
        #: The place whose row the cursor is in, by its number from nought.
        self.marked = -1
        self._spots: Spots = ()
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)

    def put(self, stage: Stage, *, current: bool) -> None:
        """Show a stage."""
        if stage != self.stage or current != self.current:
            self.stage, self.current = stage, current
            self._picture = stage.picture()
            self.setAccessibleName(stage.spoken)
            hover(self, stage.spoken)
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

    def mark(self, place: int, spots: Spots) -> None:
        """Show one place of this step in blue; less than nought shows none."""
        mine = tuple(spot for spot in spots if self.stage is not None and spot[3] == self.stage.key)
        if (place, mine) != (self.marked, self._spots):
            self.marked, self._spots = place, mine
            self.update()

    def ring(self) -> tuple[float, float, float] | None:
        """Middle and radius of the ring round the place that is marked [px]; none where it is not drawn."""
        if self.marked < 0 or not self.current or self.stage is None or self._picture is None:
            return None
        if self._drawing is not None:
            if self.marked >= len(self._spots):
                return None
            left, top, factor = _place_of(look(), self._room(), self._drawing)
            u, v, reach, _ = self._spots[self.marked]
            return left + u * factor, top + v * factor, reach * factor
        return ring_of(self.stage.before, self.stage.after, self._picture, self._room(), self.marked)

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
            self._paint_ring(painter, now)
            self._paint_caption(painter, now, stage, foot)
            ink.upright(painter, now.colour("rule"), self.width() - 1, 0, self.height())
            if self.current:
                high = now.px(4)
                painter.fillRect(QRect(0, self.height() - high, self.width(), high), now.colour("bluemark"))

    def _paint_ring(self, painter: QPainter, now: Look) -> None:
        """Round the place in hand."""
        if (ring := self.ring()) is None:
            return
        x, y, radius = ring
        radius = max(radius + now.px(4), now.px(7))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(now.colour("bluemark"), now.px(3)))
        painter.setBrush(QtCore.Qt.BrushStyle.NoBrush)
        painter.drawEllipse(QPointF(x, y), radius, radius)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)

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
            caption = {"before": translate("Strip", "before"), "stock": translate("Strip", "stock, for")}.get(
                self.moment, caption
            )
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
