"""The ground of a closed line: paper, tint and bar of the chosen one, the ring of
focus; rows and headings paint on it.
"""

from __future__ import annotations

from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter, QPen

from jobsheet.gui.column.measures import Columns
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import Look


class LineGround:
    """One line in the making: its upper left corner is the painter's origin."""

    def __init__(
        self, painter: QPainter, now: Look, at: Columns, high: int, *, chosen: bool, focused: bool
    ) -> None:
        self.painter = painter
        self.now = now
        self.at = at
        self.high = high
        self.middle = (high - 1) / 2
        self.chosen = chosen
        self._focused = focused

    def begin(self) -> None:
        """Paper, or the tint and the bar of the chosen one."""
        now = self.now
        whole = QRect(0, 0, self.at.width, self.high)
        ink.fill(self.painter, whole, now.colour("chosen" if self.chosen else "paper"))
        if self.chosen:
            ink.fill(self.painter, QRect(0, 0, now.px(4), self.high), now.colour("bluemark"))

    def margin_line(self) -> None:
        """The line between what to do and what is asked."""
        ink.upright(self.painter, self.now.colour("ink"), self.at.margin, 0, self.high)

    def finish(self) -> None:
        """The hairline under it, and over everything the ring of focus."""
        ink.horizontal(self.painter, self.now.colour("rule"), 0, self.at.width, self.high - 1)
        if self._focused:
            self.painter.setPen(QPen(self.now.colour("bluemark"), self.now.px(3)))
            self.painter.drawRect(QRect(0, 0, self.at.width, self.high).adjusted(1, 1, -2, -2))
