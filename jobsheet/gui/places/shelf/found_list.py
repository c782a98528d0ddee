"""What was found, a row a job: number and name, where it was found, the machine, when it was made last and how that went."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, QSize, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.shelf.shelf_questions import Hit

translate = QCoreApplication.translate
ROW, PAD = 58, 12
#: Shares of the width: number and name, revision, machine, last made, how it went.
SHARES = (0.42, 0.06, 0.18, 0.15, 0.19)
#: Below this width [px at 100 %] how it went stands under when: name, revision, machine, both.
NARROW, FEWER = 680, (0.46, 0.06, 0.22, 0.26)


def made_words(hit: Hit) -> str:
    """When it was made last, and on how many days."""
    if not hit.made:
        return translate("Shelf", "not made yet")
    return (
        hit.made
        if hit.times < 2
        else translate("Shelf", "{date}, {times} times").format(date=hit.made, times=hit.times)
    )


def went_words(hit: Hit) -> str:
    """How it went."""
    return hit.went or translate("Shelf", "no record")


def twins_words(hit: Hit) -> str:
    """That its plan lies in a second file beside it; empty where it does not."""
    if not hit.twins:
        return ""
    return translate("Shelf", "the same plan as {other}").format(other=", ".join(hit.twins))


class FoundList(QWidget):
    """The rows; one of them is chosen. It takes no keys itself: the find line moves the choice, and text goes on there."""

    chosen = Signal(int)
    opened = Signal(int)

    def __init__(self, parent: QWidget, title_of: Callable[[str], str]) -> None:
        super().__init__(parent)
        self.hits: Sequence[Hit] = ()
        self.at = -1
        self._title_of = title_of
        self.setAccessibleName(translate("Shelf", "What was found"))

    def put(self, hits: Sequence[Hit], at: int) -> None:
        """Show these, and which is chosen."""
        self.hits, self.at = hits, at
        self.setFixedHeight(max(1, len(hits)) * look().px(ROW))
        self.setAccessibleDescription(self.said(hits[at]) if 0 <= at < len(hits) else "")
        self.update()

    def said(self, hit: Hit) -> str:
        """A row as a screen reader says it."""
        parts = (
            self._named(hit),
            self._title_of(hit.machine),
            made_words(hit),
            went_words(hit),
            twins_words(hit),
            hit.where,
        )
        return ", ".join(part for part in parts if part)

    def _named(self, hit: Hit) -> str:
        return " ".join(part for part in (hit.number or Path(hit.path).stem, hit.name) if part)

    def sizeHint(self) -> QSize:  # noqa: N802
        """As high as its rows."""
        return QSize(look().px(600), max(1, len(self.hits)) * look().px(ROW))

    def row_box(self, at: int) -> QRect:
        """Where a row stands."""
        high = look().px(ROW)
        return QRect(0, at * high, self.width(), high)

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """The row under the pointer is chosen."""
        at = int(event.position().y()) // look().px(ROW)
        if 0 <= at < len(self.hits):
            self.chosen.emit(at)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """And opened."""
        at = int(event.position().y()) // look().px(ROW)
        if 0 <= at < len(self.hits):
            self.opened.emit(at)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """The rows in sight alone."""
        now = look()
        high = now.px(ROW)
        first, last = event.rect().top() // high, event.rect().bottom() // high
        with QPainter(self) as painter:
            painter.fillRect(event.rect(), now.colour("paper"))
            for at in range(max(0, first), min(len(self.hits), last + 1)):
                self._row(painter, at)

    def _row(self, painter: QPainter, at: int) -> None:
        now, hit, box = look(), self.hits[at], self.row_box(at)
        if at == self.at:
            painter.fillRect(box, now.colour("field"))
            painter.fillRect(QRect(0, box.top(), now.px(4), box.height()), now.colour("blue"))
        narrow = box.width() / now.scale < NARROW
        shares = FEWER if narrow else SHARES
        left, widths = now.px(PAD), [int((box.width() - 2 * now.px(PAD)) * share) for share in shares]
        upper, lower = box.top() + now.px(6), box.top() + now.px(30)
        line = now.px(22)
        number = ink.write(
            painter, now, QRect(left, upper, widths[0], line), hit.number or Path(hit.path).stem, now.head
        )
        name = QRect(left + number + now.px(8), upper, max(0, widths[0] - number - now.px(16)), line)
        ink.write(painter, now, name, hit.name, now.body)
        ink.write(
            painter,
            now,
            QRect(left, lower, widths[0] - now.px(8), line),
            twins_words(hit) or hit.where or hit.path,
            now.caption,
            "ink" if hit.twins else "pencil",
        )
        left += widths[0]
        machine = (self._title_of(hit.machine), hit.material)
        made, went = made_words(hit), went_words(hit)
        cells = (
            ((hit.revision, ""), machine, (made, went))
            if narrow
            else ((hit.revision, ""), machine, (made, ""), (went, ""))
        )
        for (words, under), width in zip(cells, widths[1:], strict=True):
            tone = "ink" if hit.made or words != went else "pencil"
            ink.write(painter, now, QRect(left, upper, width - now.px(8), line), words, now.body, tone)
            ink.write(painter, now, QRect(left, lower, width - now.px(8), line), under, now.caption, "pencil")
            left += width
        ink.horizontal(painter, now.colour("rule"), 0, box.width(), box.bottom())


def keys_move(key: int, at: int, count: int) -> int | None:
    """Where an arrow goes from a row; None for other keys."""
    steps = {
        QtCore.Qt.Key.Key_Down: 1, QtCore.Qt.Key.Key_Up: -1, QtCore.Qt.Key.Key_PageDown: 8, QtCore.Qt.Key.Key_PageUp: -8,
    }  # fmt: skip
    step = steps.get(QtCore.Qt.Key(key))
    if step is None or not count:
        return None
    return max(0, min(count - 1, at + step))
