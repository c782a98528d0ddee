"""One limit of the open row: its name, its bar towards the fence, what is asked of what, and the verdict."""

from __future__ import annotations

import re

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.help_asked import ask_help
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.bar_painter import paint_share_bar
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.spoken import verdict_word
from jobsheet.gui.ink.tokens import VERDICTS
from jobsheet.model.figure import Limit

translate = QCoreApplication.translate


ROW = 34


GOVERNING = 56


_PARTS = re.compile(r"^(.*(?: of|, at least) \S+) (\S.*)$")


#: Units longer than this go under their number; all of them where the bars would be too short.
LONG_UNIT = 6


#: A bar shorter than this [px at 100 %] says too little.
SHORT = 84


def in_two(shown: str, *, tight: bool = False) -> tuple[str, str]:
    """Demand and capacity, and the unit where it is too long to stand behind them."""
    match = _PARTS.match(shown)
    if match and (tight or len(match[2]) > LONG_UNIT):
        return match[1], match[2]
    return shown, ""


def spoken(limit: Limit) -> str:
    """The whole row in one sentence, for a screen reader."""
    if limit.capacity <= 0:
        return translate("Limits", "{title}: {shown}, {sentence}").format(
            title=limit.title, shown=limit.shown, sentence=limit.sentence
        )
    word = verdict_word(limit.verdict)
    return translate("Limits", "{title}: {shown}, {share} % of what there is, {verdict}. {sentence}").format(
        title=limit.title,
        shown=limit.shown,
        share=round(limit.share * 100),
        verdict=f"{word}, {limit.odds}" if limit.odds else word,
        sentence=limit.sentence,
    )


def _halves(place: QRect, high: int, down: int) -> tuple[QRect, QRect]:
    """Room for two lines about the middle of a place, so many pixels lower."""
    middle = place.height() // 2 + down
    return (
        QRect(place.left(), middle - high, place.width(), high),
        QRect(place.left(), middle, place.width(), high - 1),
    )


class LimitRow(QWidget):
    """One limit: its name, its bar, demand of capacity, verdict; pressed, its page
    of the help, or that of its verdict.
    """

    #: An arrow key: to the row below, or above.
    stepped = Signal(int)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setCursor(QtCore.Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.ClickFocus)
        self.limit: Limit | None = None
        self.title_width = 0
        self.value_width = 0
        self.word_width = 0
        self.tight = False
        self.governs = False
        self.stale = False

    def put(self, limit: Limit, *, governs: bool, stale: bool) -> None:
        """Show a limit."""
        if (limit, governs, stale) == (self.limit, self.governs, self.stale):
            return
        self.limit, self.governs, self.stale = limit, governs, stale
        self.setAccessibleName(spoken(limit))
        hover(self, limit.sentence)
        self.update()

    def help_topic(self) -> str:
        """The page of its limit."""
        return f"limit:{self.limit.name}" if self.limit is not None else ""

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """The page of the verdict where its word was pressed, else that of the limit."""
        if self.limit is not None and self.rect().contains(event.position().toPoint()):
            on_word = event.position().x() >= self.columns()[2]
            ask_help(self, f"verdict:{self.limit.verdict}" if on_word else self.help_topic())

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Enter opens the page; Up and Down go to the other rows."""
        if event.key() in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter, QtCore.Qt.Key.Key_Space):
            ask_help(self, self.help_topic())
        elif event.key() in (QtCore.Qt.Key.Key_Up, QtCore.Qt.Key.Key_Down):
            self.stepped.emit(1 if event.key() == QtCore.Qt.Key.Key_Down else -1)
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Show the ring."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Take the ring away."""
        super().focusOutEvent(event)
        self.update()

    def columns(self) -> tuple[int, int, int, int]:
        """Where bar, value and mark begin, and how wide the word is [px]."""
        now = look()
        mark = self.width() - self.word_width - now.px(24)
        return self.title_width, mark - now.px(14) - self.value_width, mark, self.word_width

    def needed_height(self, width: int) -> int:
        """Taller for the one that governs, more where its sentence needs a line of its own."""
        now = look()
        if not self.governs or self.limit is None:
            return now.px(ROW)
        return now.px(GOVERNING) + self._own_line(width)

    def _own_line(self, width: int) -> int:
        """The height of the sentence where it does not fit under the value."""
        now = look()
        if self.limit is None or not self.limit.sentence:
            return 0
        alone = not in_two(self.limit.shown, tight=self.tight)[1]
        if alone and now.width(self.limit.sentence, now.caption) <= self.value_width:
            return 0
        return ink.paragraph_height(now, self.limit.sentence, now.caption, width) + now.px(4)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The row as look/ draws it."""
        now, limit = look(), self.limit
        if limit is None:
            return
        own = self._own_line(self.width()) if self.governs else 0
        high = self.height() - own
        bar, value_left, mark, word = self.columns()
        icon, word_token, mark_token = VERDICTS.get(limit.verdict, ("", "pencil", "pencil"))
        with QPainter(self) as painter:
            title = QRect(0, 0, bar, high)
            ink_token = "pencil" if self.stale else "ink"
            if self.governs:
                upper = QRect(0, 0, bar, high // 2 + now.px(2))
                lower = QRect(0, high // 2 + now.px(1), bar, now.px(16))
                ink.write(painter, now, upper, limit.title, now.bold, ink_token, ink.LEFT)
                ink.write(painter, now, lower, translate("Limits", "governs"), now.caption, "pencil")
            else:
                ink.write(painter, now, title, limit.title, now.body, ink_token)
            box = QRect(bar + now.px(10), 0, value_left - bar - now.px(20), high)
            paint_share_bar(painter, now, box, limit, governs=self.governs)
            self._paint_value(painter, QRect(value_left, 0, self.value_width, high), ink_token, own=bool(own))
            if icon:
                signs.draw(painter, icon, getattr(now.tokens, mark_token), mark, high / 2, now.px(16))
            place = QRect(mark + now.px(23), 0, word + now.px(4), high)
            text = verdict_word(limit.verdict)
            upper, lower = (
                (_halves(place, now.px(16), now.px(2) if self.governs else 0))
                if limit.odds
                else (place, place)
            )
            ink.write(painter, now, upper, text, now.bold if self.governs else now.body, word_token)
            if limit.odds:
                ink.write(painter, now, lower, limit.odds, now.caption, "pencil")
            if own:
                sentence = QRect(0, high - now.px(6), self.width(), own + now.px(4))
                ink.paragraph(painter, now, sentence, limit.sentence, now.caption, "pencil")
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), self.height() - 1)
            if self.hasFocus():
                painter.setPen(QPen(now.colour("bluemark"), now.px(2)))
                painter.drawRect(self.rect().adjusted(1, 1, -2, -2))

    def _paint_value(self, painter: QPainter, place: QRect, token: str, *, own: bool) -> None:
        """Demand of capacity; under it a long unit, or the sentence of the one that governs."""
        now, limit = look(), self.limit
        if limit is None:
            return
        number, unit = in_two(limit.shown, tight=self.tight)
        under = unit or (limit.sentence if self.governs and not own else "")
        font = now.bold if self.governs else now.body
        if not under:
            ink.write(painter, now, place, number, font, token, ink.RIGHT)
            return
        upper, lower = _halves(place, now.px(16), now.px(2) if self.governs else 0)
        ink.write(painter, now, upper, number, font, token, ink.RIGHT)
        ink.write(painter, now, lower, under, now.caption, "pencil", ink.RIGHT)
