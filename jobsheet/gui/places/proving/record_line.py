"""One line of the record: number, day, cut, size, outcome with its mark; under it the
rest. What was struck stays to be read.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.pressable import Pressable
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import Look, look
from jobsheet.gui.places.proving.record_rows import RecordRow
from jobsheet.report.charts import SOFT

translate = QCoreApplication.translate
#: Height of the first line, and room under the last [px at 100 %].
FIRST, FOOT = 28, 8
_CLEAN = "clean"


def paint_mark(painter: QPainter, now: Look, outcome: str, left: int, middle: int) -> None:
    """The sign of an outcome: a punch mark clean, an open diamond a soft sign, a
    cross where something gave out.
    """
    reach, x = now.px(5), left + now.px(8)
    if outcome == _CLEAN:
        signs.draw(painter, "verdict-cut-before", now.tokens.ink, left, middle, now.px(16))
        return
    painter.setPen(QPen(now.colour("ink"), 2.2 * now.scale))
    if outcome in SOFT:
        corners = ((x, middle - reach), (x + reach, middle), (x, middle + reach), (x - reach, middle))
        for start, end in zip(corners, (*corners[1:], corners[0]), strict=True):
            painter.drawLine(*start, *end)
        return
    painter.drawLine(x - reach, middle - reach, x + reach, middle + reach)
    painter.drawLine(x - reach, middle + reach, x + reach, middle - reach)


class RecordLine(Pressable):
    """A line that can be chosen by key and opened by Enter, Delete or pressing it."""

    #: Up or down by so many lines; a thousand is the end.
    moved = Signal(int)
    reached = Signal()

    def __init__(self, row: RecordRow, parent: QWidget) -> None:
        super().__init__(parent)
        self.row = row
        self.setAccessibleName(row.spoken())
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)

    def _under(self) -> str:
        """The rest of what is known of it, said whole."""
        row = self.row
        if row.struck:
            return translate("Record", "struck out {why}").format(why=f"{row.struck} · {row.under}")
        if row.kept:
            return translate("Record", "it was so, somebody said") + f" · {row.under}"
        return row.under

    def needed(self, width: int) -> int:
        """The height that it needs at a width."""
        now = look()
        room = width - now.px(44) - now.px(10)
        return now.px(FIRST - 4 + FOOT) + ink.paragraph_height(now, self._under(), now.caption, room)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Arrows go through the lines; Delete asks to strike."""
        key = QtCore.Qt.Key
        far = {
            key.Key_Up: -1, key.Key_Down: 1, key.Key_Home: -1000, key.Key_End: 1000, key.Key_PageUp: -8, key.Key_PageDown: 8,
        }.get(key(event.key()))  # fmt: skip
        if far is not None:
            self.moved.emit(far)
        elif event.key() in (key.Key_Delete, key.Key_Backspace):
            self.click()
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Seen where it stands."""
        super().focusInEvent(event)
        self.reached.emit()
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Another is chosen."""
        super().focusOutEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Two lines of words, and a stroke through what was struck."""
        now, row = look(), self.row
        tone = "pencil" if row.struck else "ink"
        with QPainter(self) as painter:
            if self.hasFocus():
                painter.fillRect(self.rect(), now.colour("chosen"))
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            pad, high = now.px(10), now.px(FIRST)
            number = QRect(0, 0, now.px(34), high)
            ink.write(painter, now, number, f"{row.number}", now.caption, "pencil", ink.RIGHT)
            left = now.px(44)
            room = self.width() - left - pad
            what = self._outcome(painter, now, room, high)
            day = now.width("2026-11-12 00:00", now.body) + now.px(12)
            end = left + room - what
            ink.write(painter, now, QRect(left, 0, day, high), row.when, now.body, tone)
            at = left + day
            at += ink.write(painter, now, QRect(at, 0, end - at, high), row.lead, now.bold, tone) + now.px(8)
            at += ink.write(painter, now, QRect(at, 0, max(end - at, 0), high), row.size, now.body, tone)
            if row.struck:
                ink.horizontal(painter, now.colour("ink"), left, min(at, end), high // 2)
            under = QRect(left, high - now.px(4), room, self.height())
            ink.paragraph(painter, now, under, self._under(), now.caption, "ink" if row.struck else "pencil")
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), self.height() - 1)
            if self.hasFocus():
                painter.setPen(QPen(now.colour("bluemark"), 2))
                painter.drawRect(self.rect().adjusted(1, 1, -2, -2))

    def _outcome(self, painter: QPainter, now: Look, room: int, high: int) -> int:
        """Mark and word at the right; the room that they take."""
        row = self.row
        if not row.outcome:
            return 0
        wide = now.width(row.outcome, now.bold) + now.px(24)
        left = now.px(44) + room - wide
        paint_mark(painter, now, row.outcome, left, high // 2)
        box = QRect(left + now.px(24), 0, wide, high)
        ink.write(painter, now, box, row.outcome, now.bold, "pencil" if row.struck else "ink")
        return wide + now.px(10)
