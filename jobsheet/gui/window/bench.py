"""The ground on which the panels lie: title block, strip, column, status line, from the top."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.column import Column
from jobsheet.gui.column.measures import STRIP as STRIP_HIGH
from jobsheet.gui.forms.title_cell import HIGH as TITLE_HIGH
from jobsheet.gui.ink import ink, look
from jobsheet.gui.window.status import HIGH as STATUS_HIGH
from jobsheet.gui.window.status import StatusLine
from jobsheet.gui.window.title_block import TitleBlock

if TYPE_CHECKING:
    from jobsheet.gui.strip.strip import Strip

GAP = 8
#: Below this height [px at 100 %] the strip is low, and below the other it gives its room to the rows.
STRIP_FROM, LOW_FROM = 520, 400
#: How high it is where it is low.
LOW = 88


class Bench(QWidget):
    """The ground on which the panels lie."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.title = TitleBlock(self)
        self.strip: Strip | None = None
        self.column = Column(self)
        self.status = StatusLine(self)

    def make_strip(self) -> Strip:
        """The strip; its place is kept free for it from the first painting on."""
        if self.strip is None:
            from jobsheet.gui.strip.strip import Strip

            self.strip = Strip(self)
            self.strip.show()
            self.arrange()
        return self.strip

    def resizeEvent(self, _event: QResizeEvent) -> None:  # noqa: N802
        """Title block, strip, column, status line, from the top."""
        self.arrange()

    def arrange(self) -> None:
        """Place the panels."""
        now = look.look()
        width, high = self.width(), self.height()
        gap = now.px(GAP)
        top = now.px(TITLE_HIGH)
        self.title.setGeometry(0, 0, width, top)
        top += gap
        at_100 = high / now.scale
        strip = now.px(STRIP_HIGH[now.form(width)] if at_100 >= STRIP_FROM else LOW)
        shown = at_100 >= LOW_FROM
        if self.strip is not None:
            self.strip.setVisible(shown)
            self.strip.setGeometry(gap, top, width - 2 * gap, strip)
        if shown:
            top += strip + gap
        foot = now.px(STATUS_HIGH)
        self.status.setGeometry(0, high - foot, width, foot)
        self.column.setGeometry(gap, top, width - 2 * gap, high - foot - top)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The bench."""
        with QPainter(self) as painter:
            ink.fill(painter, self.rect(), look.look().colour("bench"))
