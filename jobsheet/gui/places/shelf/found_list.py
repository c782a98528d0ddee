"""What was found, a row a job (`found_row.py` paints one); and over the rows what stands in their columns."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, QSize, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.places.shelf.found_row import ROW, paint_heads, paint_row
from jobsheet.gui.places.shelf.found_words import how_words, made_words, twins_words
from jobsheet.shelf.shelf_questions import Hit
from jobsheet.shelf.worked_kept import Worked

translate = QCoreApplication.translate
HEADS = 24


class FoundHeads(QWidget):
    """The heads of the columns, which stay where they are."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFixedHeight(look().px(HEADS))

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Words and a line."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), look().colour("paper"))
            paint_heads(painter, look(), self.width(), self.height())


class FoundList(QWidget):
    """The rows; one of them is chosen. It takes no keys itself: the find line moves
    the choice, and text goes on there.
    """

    chosen = Signal(int)
    opened = Signal(int)

    def __init__(
        self, parent: QWidget, title_of: Callable[[str], str], worked: Callable[[str], Worked | None]
    ) -> None:
        super().__init__(parent)
        self.hits: Sequence[Hit] = ()
        self.at = -1
        self._title_of = title_of
        self._worked = worked
        self.setAccessibleName(translate("Shelf", "What was found"))

    def put(self, hits: Sequence[Hit], at: int) -> None:
        """Show these, and which is chosen."""
        self.hits, self.at = hits, at
        self.setFixedHeight(max(1, len(hits)) * look().px(ROW))
        self.setAccessibleDescription(self.said(hits[at]) if 0 <= at < len(hits) else "")
        self.update()

    def said(self, hit: Hit) -> str:
        """A row as a screen reader says it."""
        how, detail = how_words(hit, self._worked(hit.content))
        named = " ".join(part for part in (hit.number or Path(hit.path).stem, hit.name) if part)
        made, times = made_words(hit)
        parts = (named, self._title_of(hit.machine), made, times, how, detail, twins_words(hit), hit.where)
        return ", ".join(part for part in parts if part)

    def in_sight(self) -> tuple[Hit, ...]:
        """The rows that somebody sees."""
        high, seen = look().px(ROW), self.visibleRegion().boundingRect()
        return tuple(self.hits[max(0, seen.top() // high) : seen.bottom() // high + 1])

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
                hit, box = self.hits[at], self.row_box(at)
                if at == self.at:
                    painter.fillRect(box, now.colour("field"))
                    painter.fillRect(QRect(0, box.top(), now.px(4), box.height()), now.colour("blue"))
                paint_row(painter, now, box, hit, self._title_of(hit.machine), self._worked(hit.content))
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
