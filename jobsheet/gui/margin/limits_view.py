"""The limits of the open row: one light widget a limit, all towards the same fence."""

from __future__ import annotations

from functools import partial

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.spoken import verdict_word
from jobsheet.gui.margin.limit_row import SHORT, LimitRow, in_two
from jobsheet.model.figure import Limit

translate = QCoreApplication.translate


class LimitsView(QWidget):
    """The governing limit, the next four, and one line for the rest."""

    FOLLOWING = 4
    REST = 30

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("Limits", "What can give out"))
        self._rows: list[LimitRow] = []
        self._rest = self._whole_rest = self._short_rest = ""
        self._all = False
        self._limits: tuple[Limit, ...] = ()

    def put(self, limits: tuple[Limit, ...], *, stale: bool, order: tuple[str, ...] = ()) -> None:
        """Show limits, nearest to giving out first; `order` holds them still while a field has the focus."""
        if order:
            place = {name: index for index, name in enumerate(order)}
            limits = (*limits[:1], *sorted(limits[1:], key=lambda limit: place.get(limit.name, len(place))))
        self._limits = limits
        shown, rest = self._shown(limits)
        while len(self._rows) < len(shown):
            row = LimitRow(self)
            if not self._rows:  # Tab stops once; the arrows go on from there
                row.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
            row.stepped.connect(partial(self._step, len(self._rows)))
            row.show()
            self._rows.append(row)
        for index, row in enumerate(self._rows):
            row.setVisible(index < len(shown))
            if index < len(shown):
                row.put(shown[index], governs=index == 0, stale=stale)
        whole, short = self._words_for_rest(rest)
        if whole != self._whole_rest:
            self._rest = self._whole_rest = whole
            self._short_rest = short
            self.update()

    def _shown(self, limits: tuple[Limit, ...]) -> tuple[tuple[Limit, ...], tuple[Limit, ...]]:
        """Those that have a row, and the rest; what nothing was tried of is never among the rest."""
        first, rest = limits[: 1 + self.FOLLOWING], limits[1 + self.FOLLOWING :]
        return (
            (*first, *(limit for limit in rest if limit.from_class)),
            tuple(limit for limit in rest if not limit.from_class),
        )

    def _step(self, index: int, by: int) -> None:
        """The keyboard to the row above or below."""
        shown = [row for row in self._rows if not row.isHidden()]
        if 0 <= index + by < len(shown):
            shown[index + by].setFocus(QtCore.Qt.FocusReason.OtherFocusReason)

    def stops(self) -> list[QWidget]:
        """What Tab stops at."""
        return [row for row in self._rows[:1] if not row.isHidden()]

    def _share_widths(self, width: int) -> None:
        """Columns as wide as their longest text, the same in all rows: the fences stand in one line."""
        now = look()
        shown = [
            (row.limit, now.bold if row.governs else now.body) for row in self._rows if not row.isHidden()
        ]
        limits = [(limit, font) for limit, font in shown if limit is not None]
        title = max((now.width(limit.title, font) for limit, font in limits), default=0)
        words = [
            max(now.width(self._word(limit), now.bold), now.width(limit.odds, now.caption))
            for limit, _ in limits
        ]
        word = max(words, default=0)
        for tight in (False, True):
            parts = [(in_two(limit.shown, tight=tight), font) for limit, font in limits]
            value = max(
                (
                    max(now.width(number, font), now.width(unit, now.caption))
                    for (number, unit), font in parts
                ),
                default=0,
            )
            if width - title - value - word - now.px(58) >= now.px(SHORT):
                break
        for row in self._rows:
            row.title_width, row.value_width, row.word_width, row.tight = title, value, word, tight

    @staticmethod
    def _word(limit: Limit) -> str:
        """The verdict as the row has it."""
        return verdict_word(limit.verdict)

    def names(self) -> tuple[str, ...]:
        """The order as it stands now."""
        return tuple(limit.name for limit in self._limits)

    def has_rest(self) -> bool:
        """Whether there is a line for the rest."""
        return bool(self._rest)

    def rest_width(self) -> int:
        """How wide the line for the rest is [px]."""
        return look().width(self._rest, look().caption)

    @staticmethod
    def _words_for_rest(rest: tuple[Limit, ...]) -> tuple[str, str]:
        """One line for all that is far from giving out: with their names, and
        without where there is no room.
        """
        if not rest:
            return "", ""
        names = ", ".join(limit.title.lower() for limit in rest)
        most = max(1, round(max(limit.share for limit in rest) * 100 + 0.5))
        whole = translate("Limits", "{names}: at most {share} %").format(names=names, share=most)
        return whole, translate("Limits", "{count} more: at most {share} %").format(
            count=len(rest), share=most
        )

    def arrange(self, width: int) -> int:
        """Place the rows; the height they need."""
        top = 0
        now = look()
        fits = now.width(self._whole_rest, now.caption) <= width
        self._rest = self._whole_rest if fits else self._short_rest
        self._share_widths(width)
        for row in self._rows:
            if not row.isHidden():
                row.resize(width, 1)
                high = row.needed_height(width)
                row.setGeometry(0, top, width, high)
                top += high
        return top + (look().px(self.REST) if self._rest else 0)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The line for the rest."""
        if not self._rest:
            return
        now = look()
        with QPainter(self) as painter:
            high = now.px(self.REST)
            place = QRect(0, self.height() - high, self.width(), high)
            ink.write(painter, now, place, self._rest, now.caption, "pencil")
