"""One line of the ruled list: what it shows, and where it stands."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.views import HeadingView, RowAsked, RowView

#: What a line shows, and what is put in it: a row that is not in sight yet is only asked for.
View = HeadingView | RowView
Put = View | RowAsked


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

    __slots__ = ("_put", "high", "key", "top", "widget")

    def __init__(self, put: Put | None, widget: LineWidget | None = None) -> None:
        self._put = put
        self.widget = widget
        self.key = put.key if put is not None else widget.key if widget is not None else ""
        self.top = self.high = 0

    @property
    def view(self) -> View | None:
        """What it shows, put together now where nobody looked before; None of what asks or says something."""
        if isinstance(self._put, RowAsked):
            self._put = self._put.made()
        return self._put

    def put(self, what: Put, *, in_sight: bool) -> bool:
        """Show this from now on; whether it has to be painted anew. What is out of sight is
        put together when it comes into it.
        """
        if isinstance(what, RowAsked) and not in_sight:
            self._put = what
            return False
        before = self._put
        self._put = what
        return self.view != before

    @property
    def bottom(self) -> int:
        """The height at which the next one begins."""
        return self.top + self.high

    @property
    def is_row(self) -> bool:
        """Whether it is an operation."""
        return isinstance(self._put, (RowView, RowAsked))

    @property
    def is_heading(self) -> bool:
        """Whether it is the heading of a set-up."""
        return isinstance(self._put, HeadingView)

    @property
    def is_painted(self) -> bool:
        """Whether it is a row or a heading, which the list paints by itself."""
        return self._put is not None
