"""What is to be looked at, a line each: the step, and why; what was looked at is ticked."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.review.hanging import Hangs

translate = QCoreApplication.translate
PAD, NUMBER, BOX = 12, 76, 14


class HangingRows(QWidget):
    """Arrows choose, Enter goes to the step, the space bar ticks a line off."""

    wanted = Signal(str)
    ticked = Signal()
    #: The line that is chosen, from and how high [px]: so that it is brought into view.
    reached = Signal(int, int)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.rows: Sequence[Hangs] = ()
        self.done: set[Hangs] = set()
        self.at = 0
        self._tops: list[int] = []
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(translate("Made", "To be looked at"))

    def put(self, rows: Sequence[Hangs]) -> None:
        """Show these; what was ticked off and is still there stays so."""
        self.rows = rows
        self.done &= set(rows)
        self.at = max(0, min(self.at, len(rows) - 1))
        self._arrange()
        self._tell()

    def _arrange(self) -> None:
        now = look()
        inside = max(now.px(200), self.width() - 2 * now.px(PAD) - now.px(NUMBER + BOX + 8))
        top, self._tops = 0, []
        for row in self.rows:
            self._tops.append(top)
            top += max(now.px(36), ink.paragraph_height(now, row.why, now.body, inside) + now.px(16))
        self._tops.append(top)
        self.setMinimumHeight(max(top, now.px(40)))
        self.update()

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Words wrap otherwise."""
        self._arrange()

    def _tell(self) -> None:
        if not self.rows:
            self.setAccessibleDescription(translate("Made", "nothing"))
            return
        row = self.rows[self.at]
        ticked = translate("Made", "looked at") if row in self.done else ""
        self.setAccessibleDescription(", ".join(part for part in (_called(row), row.why, ticked) if part))
        self.reached.emit(self._tops[self.at], self._tops[self.at + 1] - self._tops[self.at])
        self.update()

    def _go(self, at: int) -> None:
        self.at = max(0, min(at, len(self.rows) - 1))
        self._tell()

    def _tick(self) -> None:
        row = self.rows[self.at]
        self.done ^= {row}
        if row in self.done:
            self._go(self.at + 1)
        self._tell()
        self.ticked.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Arrows, Enter and the space bar."""
        key = QtCore.Qt.Key(event.key())
        steps = {QtCore.Qt.Key.Key_Down: 1, QtCore.Qt.Key.Key_Up: -1}
        if not self.rows:
            super().keyPressEvent(event)
        elif key in steps:
            self._go(self.at + steps[key])
        elif key in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter):
            self.wanted.emit(self.rows[self.at].key)
        elif key == QtCore.Qt.Key.Key_Space:
            self._tick()
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A press chooses; on the box it ticks off."""
        y = int(event.position().y())
        at = next(
            (index for index in range(len(self.rows)) if self._tops[index] <= y < self._tops[index + 1]), None
        )
        if at is None:
            return
        self._go(at)
        if event.position().x() < look().px(PAD + BOX + 8):
            self._tick()

    def mouseDoubleClickEvent(self, _event: QMouseEvent) -> None:  # noqa: N802
        """Go to the step."""
        if self.rows:
            self.wanted.emit(self.rows[self.at].key)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """A box, the step and why."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            for at, row in enumerate(self.rows):
                box = QRect(0, self._tops[at], self.width(), self._tops[at + 1] - self._tops[at])
                if at == self.at:
                    painter.fillRect(box, now.colour("chosen"))
                    painter.fillRect(QRect(0, box.top(), now.px(4), box.height()), now.colour("blue"))
                tone = "pencil" if row in self.done else "ink"
                side = now.px(BOX)
                tick = QRect(now.px(PAD), box.top() + now.px(11), side, side)
                ink.frame(painter, tick, now.colour("edge"))
                if row in self.done:
                    painter.setPen(now.colour("ink"))
                    painter.drawLine(
                        tick.left() + side // 5,
                        tick.center().y(),
                        tick.center().x(),
                        tick.bottom() - side // 5,
                    )
                    painter.drawLine(tick.center().x(), tick.bottom() - side // 5, tick.right(), tick.top())
                left = tick.right() + now.px(8)
                head = QRect(left, box.top(), now.px(NUMBER), now.px(36))
                ink.write(painter, now, head, _called(row), now.bold, tone)
                words = QRect(left + now.px(NUMBER), box.top() + now.px(8), box.width(), box.height())
                words.setRight(self.width() - now.px(PAD))
                ink.paragraph(painter, now, words, row.why, now.body, tone)
                ink.horizontal(painter, now.colour("rule"), 0, box.width(), box.bottom())


def _called(row: Hangs) -> str:
    """What a line is about."""
    if row.number:
        return translate("Made", "step {number}").format(number=row.number)
    return translate("Made", "set-up") if row.key else translate("Made", "the job")
