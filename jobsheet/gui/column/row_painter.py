"""Paints a closed row: number, icon, what, cutter; in the margin speed, pace, depth, verdict."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter

from jobsheet.gui.column.line_ground import LineGround
from jobsheet.gui.column.measures import UPPER
from jobsheet.gui.column.shorter_words import beginnings, figures_line, remark_forms
from jobsheet.gui.column.views import RowView
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import Look
from jobsheet.gui.ink.tokens import SEVERITIES, VERDICTS

translate = QCoreApplication.translate


class RowPainter(LineGround):
    """One closed operation."""

    def paint(self, view: RowView) -> None:
        """All of it."""
        self.begin()
        if self.at.form == "narrow":
            self._paint_narrow(view)
        else:
            self._paint_left(view)
            self.margin_line()
            self._paint_margin(view)
        self.finish()

    def _paint_narrow(self, view: RowView) -> None:
        """Two lines: what to do with its verdict, and under it what the machine is asked for."""
        now, whole = self.now, self.high
        self.high = now.px(UPPER)
        self.middle = (self.high - 1) / 2
        self._paint_left(view)
        self._paint_share(view)
        place = QRect(
            self.at.text, self.high - now.px(4), self.at.width - self.at.text - now.px(14), whole - self.high
        )
        figures = ink.fitting(now, beginnings(figures_line(view), " · "), now.body, place.width())
        used = ink.write(self.painter, now, place, figures, now.body, "pencil" if view.stale else "ink")
        if view.stale and used:
            ink.dotted_under(self.painter, now, place.left(), place.left() + used, whole - now.px(3))
        self.high = whole

    def _paint_left(self, view: RowView) -> None:
        """Left of the line: what to do."""
        painter, now, at, high, middle = self.painter, self.now, self.at, self.high, self.middle
        if view.severity:
            icon, _, mark = SEVERITIES[view.severity]
            signs.draw(painter, icon, getattr(now.tokens, mark), at.sign, middle, now.px(16))
        number = QRect(0, 0, at.number_right, high)
        ink.write(painter, now, number, str(view.number), now.body, "pencil", ink.RIGHT)
        signs.draw(painter, view.icon, now.tokens.ink, at.icon, middle, now.px(22))
        end = at.cutter - now.px(12) if at.cutter else at.margin - now.px(10)
        room = QRect(at.text, 0, end - at.text, high)
        room.setLeft(room.left() + self._paint_words(view, room))
        if view.last:
            room.setRight(room.right() - self._paint_last(view, room))
        if at.cutter:
            place = QRect(at.cutter, 0, at.margin - at.cutter - now.px(8), high)
            ink.write(
                painter,
                now,
                place,
                ink.fitting(now, view.cutters, now.body, place.width()),
                now.body,
                "pencil",
            )
        elif not view.remark and view.cutters:
            said = ink.fitting(now, view.cutters, now.body, room.width() - now.px(24))
            if now.width(said, now.body) <= room.width() - now.px(24):
                ink.write(painter, now, room, said, now.body, "pencil", ink.RIGHT)

    def _paint_last(self, view: RowView, room: QRect) -> int:
        """How it went the last time, at the right of what is done; nothing where
        it has no room. How wide it is.
        """
        now, sign = self.now, self.now.px(20)
        forms = (view.last, view.last.partition(": ")[2], view.last_outcome)
        said = ink.fitting(now, forms, now.label, room.width() - sign - now.px(24))
        wide = now.width(said, now.label) + sign
        if wide > room.width() - now.px(24):
            return 0
        place = QRect(room.right() - wide, 0, wide, room.height())
        from jobsheet.gui.ink.outcome_mark import draw_outcome  # late: a start knows no outcome yet

        draw_outcome(self.painter, view.last_outcome, place.left(), self.middle, 14, "pencil")
        ink.write(self.painter, now, place.adjusted(sign, 0, 0, 0), said, now.label, "pencil")
        return wide + now.px(8)

    def _paint_words(self, view: RowView, room: QRect) -> int:
        """What is done and what is remarked of it, each in the longest words
        that have room; how wide they are.
        """
        painter, now = self.painter, self.now
        font = now.bold if self.chosen else now.body
        remarks = remark_forms(view)
        gap = now.px(16)
        least = now.width(remarks[-1], now.bold) + gap if remarks else 0
        title = ink.fitting(now, view.titles, font, room.width() - least)
        if now.width(title, font) > room.width():
            _paint_long(painter, now, room, view.titles[-1])
            return room.width()
        used = ink.write(painter, now, room, title, font)
        place = room.adjusted(used + gap, 0, 0, 0)
        remark = ink.fitting(now, remarks, now.bold, place.width())
        if remark and now.width(remark, now.bold) <= place.width():
            used += gap + ink.write(painter, now, place, remark, now.bold, SEVERITIES[view.severity][1])
        return used

    def _paint_margin(self, view: RowView) -> None:
        """Right of the line: what the machine is asked for."""
        painter, now, at, high = self.painter, self.now, self.at, self.high
        token = "pencil" if view.stale else "ink"
        left = at.margin
        for right, forms, font in (
            (at.rpm_right, (view.spindle,), now.bold),
            (at.pace_right, beginnings(view.pace, ", ", " in and out", " a turn"), now.body),
            (at.depth_right, beginnings(view.depth, " mm", " in"), now.body),
        ):
            place = QRect(left + now.px(6), 0, right - left - now.px(6), high)
            said = ink.fitting(now, forms, font, place.width())
            used = ink.write(painter, now, place, said, font, token, ink.RIGHT)
            if view.stale and used:
                ink.dotted_under(painter, now, right - used, right, high - now.px(6))
            left = right
        self._paint_share(view)

    def _paint_share(self, view: RowView) -> None:
        """The verdict's mark with the share and what governs."""
        painter, now, at, high, middle = self.painter, self.now, self.at, self.high, self.middle
        place = QRect(at.share, 0, at.width - at.share - now.px(6), high)
        if view.problem:
            place.setLeft(at.mark)
            ink.write(painter, now, place, translate("Rows", "– cannot be worked out"), now.body, "verm")
            return
        known = VERDICTS.get(view.verdict)
        if known:
            signs.draw(painter, known[0], getattr(now.tokens, known[2]), at.mark, middle, now.px(16))
        if view.untried:
            icon, _, mark = VERDICTS["not tried"]
            signs.draw(
                painter, icon, getattr(now.tokens, mark), place.right() - now.px(16), middle, now.px(16)
            )
            place.setRight(place.right() - now.px(20))
        share = ink.fitting(now, beginnings(view.share, ", "), now.body, place.width())
        ink.write(painter, now, place, share, now.body, "pencil" if view.stale else "ink")


def _paint_long(painter: QPainter, now: Look, place: QRect, text: str) -> None:
    """A long title in two smaller lines; what is longer still is in the tooltip."""
    cut = text.rfind(" ", 0, max(1, round(len(text) * 0.55)) + 1)
    first, second = (text[:cut], text[cut + 1 :]) if cut > 0 else (text, "")
    half = place.height() // 2
    upper = QRect(place.left(), place.top() + 1, place.width(), half)
    lower = QRect(place.left(), place.top() + half - 1, place.width(), half)
    ink.write(painter, now, upper, first, now.caption)
    ink.write(painter, now, lower, second, now.caption)
