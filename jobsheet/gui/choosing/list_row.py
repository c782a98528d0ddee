"""One row of a list to take from: a title with what stands under it, a fact with
its sign, a word at the right.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.choosing.listed import Listed
from jobsheet.gui.choosing.taken_words import write_hit
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.forms.pressable import Pressable
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look

#: A letter is this wide at most, for a row whose words may be long: then all of it stands in the tooltip.
LONG = 40


class ListRow(Pressable):
    """It shows one thing at a time; the list gives it another one as it is scrolled."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.listed: Listed | None = None
        #: Where the fact begins, as a share of the width; nought where there are no facts.
        self.split = 0.0
        self.setCheckable(True)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        self.setCursor(QtCore.Qt.CursorShape.PointingHandCursor)

    def put(self, listed: Listed, *, chosen: bool, split: float) -> None:
        """Show this one."""
        if (listed, chosen, split) == (self.listed, self.isChecked(), self.split):
            return
        self.listed, self.split = listed, split
        self.setChecked(chosen)
        self.setAccessibleName(listed.spoken())
        self.setEnabled(not listed.away)
        hover(self, listed.spoken() if len(listed.spoken()) > LONG else "")
        self.update()

    def nextCheckState(self) -> None:  # noqa: N802  named by the toolkit
        """A press takes it; which one is blue is for the list to say."""

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Ground, bar, words, a hairline below."""
        now, listed = look(), self.listed
        if listed is None:
            return
        wide, high = self.width(), self.height()
        tone = "pencil" if listed.away else "ink"
        with QPainter(self) as painter:
            ground = "chosen" if self.isChecked() else "field" if self.underMouse() else "paper"
            ink.fill(painter, self.rect(), now.colour(ground))
            if self.isChecked():
                ink.fill(painter, QRect(0, 0, now.px(4), high), now.colour("bluemark"))
            side = now.px(14)
            right = wide - side
            if beside := listed.away or listed.beside:
                room = min(now.width(beside, now.caption), wide // 2)
                place = QRect(right - room, 0, room, high)
                ink.write(painter, now, place, beside, now.caption, "pencil", ink.RIGHT)
                right -= room + now.px(10)
            split = round(wide * self.split) if self.split else right
            self._paint_words(painter, listed, QRect(side, 0, min(split, right) - side, high), tone)
            if self.split and listed.fact:
                self._paint_fact(painter, listed, QRect(split, 0, right - split, high), tone)
            ink.horizontal(painter, now.colour("rule"), 0, wide, high - 1)

    @staticmethod
    def _paint_words(painter: QPainter, listed: Listed, place: QRect, tone: str) -> None:
        now = look()
        if not listed.under:
            write_hit(painter, place, listed.title, listed.hit, tone, now.body)
            return
        middle = place.height() // 2
        title = QRect(place.left(), middle - now.px(18), place.width(), now.px(18))
        under = QRect(place.left(), middle, place.width(), now.px(16))
        write_hit(painter, title, listed.title, listed.hit, tone)
        write_hit(painter, under, listed.under, listed.under_hit, "pencil", now.caption)

    @staticmethod
    def _paint_fact(painter: QPainter, listed: Listed, place: QRect, tone: str) -> None:
        now = look()
        icon, colour = listed.sign
        if icon:
            signs.draw(
                painter, icon, getattr(now.tokens, colour), place.left(), place.center().y(), now.px(16)
            )
            place = place.adjusted(now.px(22), 0, 0, 0)
        ink.write(painter, now, place, listed.fact, now.body, tone)
