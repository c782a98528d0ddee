"""One line of the ruled list: what it shows, and where it stands."""

from __future__ import annotations

from typing import TYPE_CHECKING

from jobsheet.gui.column.views import HeadingView, RowView

if TYPE_CHECKING:
    from jobsheet.gui.column.empty_line import EmptyLine
    from jobsheet.gui.column.notice_line import NoticeLine


View = HeadingView | RowView


class Line:
    """One line: what it shows, and where it stands [px]."""

    __slots__ = ("high", "key", "top", "view", "widget")

    def __init__(self, view: View | None, widget: EmptyLine | NoticeLine | None = None) -> None:
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
