"""The heading that stays in view at the top while the rows of its set-up scroll."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.lines_painted import paint_line
from jobsheet.gui.column.views import HeadingView


class StickyHeading(QWidget):
    """The same picture as in the list, over it; the keyboard stays in the list."""

    opened = Signal(str)

    def __init__(self, view: HeadingView, parent: QWidget) -> None:
        super().__init__(parent)
        self.view = view
        self.setAccessibleName(view.spoken())

    def put(self, view: HeadingView) -> None:
        """Show a heading."""
        if view != self.view:
            self.view = view
            self.setAccessibleName(view.spoken())
            self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A click opens."""
        from PySide6.QtCore import Qt

        if event.button() == Qt.MouseButton.LeftButton and self.rect().contains(event.position().toPoint()):
            self.opened.emit(self.view.key)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """As it stands in the list."""
        with QPainter(self) as painter:
            paint_line(painter, self.view, self.width(), self.height())
