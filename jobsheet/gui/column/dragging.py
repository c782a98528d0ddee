"""A row is taken hold of by its number and let go elsewhere, with those chosen beside it; a
press that does not move is a click.
"""

from __future__ import annotations

from PySide6.QtCore import QPoint, QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.line import Line
from jobsheet.gui.column.measures import columns
from jobsheet.gui.ink.look import look

#: How far the hand moves before it is a drag and no click [px at 100 %].
SLACK = 6


class DropMark(QWidget):
    """The blue line where a dragged row would come to stand."""

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Only the line."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), look().colour("bluemark"))

    def show_at(self, y: int, width: int) -> None:
        """Show it, its middle at a height, over everything."""
        now = look()
        self.setGeometry(QRect(0, y - now.px(2), width, now.px(4)))
        self.show()
        self.raise_()


class Grip:
    """What a button of the mouse holds."""

    def __init__(self) -> None:
        #: The line that was pressed; nothing where a click is not to open it.
        self.key = ""
        #: The rows that go with it.
        self.rows: tuple[str, ...] = ()
        #: Whether it is being dragged.
        self.dragging = False
        self._from: int | None = None
        self._pressed = QPoint()

    def press(
        self, line: Line, rows: tuple[str, ...], at: QPoint, on_screen: QPoint, width: int, *, hold: bool
    ) -> None:
        """A line was pressed; it may be dragged where it is a row and is held by
        its number, and chosen rows with it.
        """
        self.key = line.key
        self.rows = rows if line.key in rows else (line.key,)
        self.dragging = False
        by_number = hold and line.is_row and at.x() < columns(look(), width).icon
        self._from = at.y() if by_number else None
        self._pressed = on_screen

    def still(self, on_screen: QPoint) -> bool:
        """Whether the hand is where it pressed, though the list under it may have
        moved: then it meant what it pressed.
        """
        slack = look().px(4 * SLACK)
        return abs(on_screen.y() - self._pressed.y()) <= slack

    def moves(self, y: int) -> bool:
        """The hand moved: whether it drags."""
        if self._from is None:
            return False
        self.dragging = self.dragging or abs(y - self._from) > look().px(SLACK)
        return self.dragging

    def release(self) -> tuple[str, tuple[str, ...]]:
        """The line that was held, and the rows that were dragged; none where it was a click."""
        held = (self.key, self.rows if self.dragging else ())
        self.key, self.rows, self.dragging, self._from = "", (), False, None
        return held
