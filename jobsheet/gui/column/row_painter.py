"""Paints a closed row: number, icon, what, cutter; in the margin speed, pace, depth, verdict."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter

from jobsheet.gui.column.line_ground import LineGround
from jobsheet.gui.column.views import RowView
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import Look
from jobsheet.gui.ink.spoken import severity_word
from jobsheet.gui.ink.tokens import SEVERITIES, VERDICTS

translate = QCoreApplication.translate


class RowPainter(LineGround):
    """One closed operation."""

    def paint(self, view: RowView) -> None:
        """All of it."""
        self.begin()
        self._paint_left(view)
        if self.at.form == "narrow":
            self._paint_share(view)
        else:
            self.margin_line()
            self._paint_margin(view)
        self.finish()

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
        font = now.bold if self.chosen else now.body
        title = QRect(at.text, 0, end - at.text, high)
        if now.width(view.title, font) > title.width():
            _paint_long(painter, now, title, view.title)
            used = title.width()
        else:
            used = ink.write(painter, now, title, view.title, font)
        remark = view.remark and translate("Rows", "{severity}: {remark}").format(
            severity=severity_word(view.severity), remark=view.remark
        )
        if remark and title.width() - used > now.px(60):
            place = title.adjusted(used + now.px(16), 0, 0, 0)
            ink.write(painter, now, place, remark, now.bold, SEVERITIES[view.severity][1])
        if at.cutter:
            place = QRect(at.cutter, 0, at.margin - at.cutter - now.px(8), high)
            ink.write(painter, now, place, view.cutter, now.body, "pencil")

    def _paint_margin(self, view: RowView) -> None:
        """Right of the line: what the machine is asked for."""
        painter, now, at, high = self.painter, self.now, self.at, self.high
        token = "pencil" if view.stale else "ink"
        left = at.margin
        for right, text, font in (
            (at.rpm_right, view.spindle, now.bold),
            (at.pace_right, view.pace, now.body),
            (at.depth_right, view.depth, now.body),
        ):
            place = QRect(left + now.px(4), 0, right - left - now.px(4), high)
            used = ink.write(painter, now, place, text, font, token, ink.RIGHT)
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
        ink.write(painter, now, place, view.share, now.body, "pencil" if view.stale else "ink")


def _paint_long(painter: QPainter, now: Look, place: QRect, text: str) -> None:
    """A long title in two smaller lines; what is longer still is in the tooltip."""
    cut = text.rfind(" ", 0, max(1, round(len(text) * 0.55)) + 1)
    first, second = (text[:cut], text[cut + 1 :]) if cut > 0 else (text, "")
    half = place.height() // 2
    upper = QRect(place.left(), place.top() + 1, place.width(), half)
    lower = QRect(place.left(), place.top() + half - 1, place.width(), half)
    ink.write(painter, now, upper, first, now.caption)
    ink.write(painter, now, lower, second, now.caption)
