"""Paints the heading of a set-up: number, face up, holding; in the margin its zero and minutes."""

from __future__ import annotations

from PySide6.QtCore import QRect

from jobsheet.gui.column.line_ground import LineGround
from jobsheet.gui.column.shorter_words import beginnings, holding_forms
from jobsheet.gui.column.views import HeadingView
from jobsheet.gui.ink import ink


class HeadingPainter(LineGround):
    """One heading."""

    def paint(self, view: HeadingView) -> None:
        """All of it."""
        self.begin()
        if self.at.form == "narrow":
            self._paint_narrow(view)
        else:
            self._paint_wide(view)
        self.finish()

    def _paint_wide(self, view: HeadingView) -> None:
        """One line of text, and the line of the margin."""
        painter, now, at, high = self.painter, self.now, self.at, self.high
        place = QRect(now.px(14), 0, at.margin - now.px(24), high)
        used = ink.write(painter, now, place, view.title, now.head)
        place.setLeft(place.left() + used + now.px(16))
        self._paint_holding(view, place)
        self.margin_line()
        zero = QRect(at.margin + now.px(17), 0, at.width - at.margin - now.px(26), high)
        said = ink.fitting(now, beginnings(view.zero, " · "), now.body, zero.width())
        ink.write(painter, now, zero, said, now.body, "pencil")

    def _paint_holding(self, view: HeadingView, place: QRect) -> None:
        """How the work is held, in the longest words that have room."""
        held = ink.fitting(self.now, holding_forms(view), self.now.body, place.width())
        ink.write(self.painter, self.now, place, held, self.now.body, "pencil")

    def _paint_narrow(self, view: HeadingView) -> None:
        """Two lines: the title, and under it holding and zero."""
        painter, now, high = self.painter, self.now, self.high
        place = QRect(now.px(14), now.px(4), self.at.width - now.px(28), now.px(28))
        ink.write(painter, now, place, view.title, now.head)
        place = QRect(now.px(14), now.px(30), self.at.width - now.px(28), high - now.px(36))
        zero = ink.write(painter, now, place, view.zero, now.body, "pencil", ink.RIGHT)
        place.setRight(place.right() - zero - now.px(16))
        self._paint_holding(view, place)
