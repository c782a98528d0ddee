"""One line of the ruled list: what it shows, and where it stands."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.views import HeadingView, RowView

View = HeadingView | RowView


class LineWidget(QWidget):
    """A line that asks or says something and is a widget of its own."""

    def __init__(self, key: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.key = key

    def height_at_100(self) -> int:
        """How high it stands, before it grows with the type."""
        raise NotImplementedError


class Line:
    """One line: what it shows, and where it stands [px]."""

    __slots__ = ("high", "key", "top", "view", "widget")

    def __init__(self, view: View | None, widget: LineWidget | None = None) -> None:
        self.view = view
        self.widget = widget
        self.key = view.key if view is not None else widget.key if widget is not None else ""
        self.top = self.high = 0

    @property
    def bottom(self) -> int:
        """The height at which the next one begins."""
        return self.top + self.high

    @property
    def is_row(self) -> bool:
        """Whether it is an operation."""
        return isinstance(self.view, RowView)

    @property
    def is_heading(self) -> bool:
        """Whether it is the heading of a set-up."""
        return isinstance(self.view, HeadingView)
