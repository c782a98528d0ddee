"""The three things to set at the machine, in the largest type of the window; and the beat of the handle."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.plain_widgets import PaintedText
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import Look, look
from jobsheet.operations.kind import Dial

CELL = 84
LINE = 44
#: What stands in place of a figure that was never known.
NOTHING = "–"

translate = QCoreApplication.translate


class DialsView(PaintedText):
    """Spindle, handle, depth: three cells side by side, or three lines where it is narrow."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setTextFormat(QtCore.Qt.TextFormat.PlainText)
        self._dials: tuple[Dial, ...] = ()
        self._stale = False
        self._why_not = ""

    def put(self, dials: tuple[Dial, ...], *, stale: bool, why_not: str) -> None:
        """Show the figures; `why_not` says why there are none."""
        if (dials, stale, why_not) == (self._dials, self._stale, self._why_not):
            return
        self._dials, self._stale, self._why_not = dials, stale, why_not
        parts = [f"{dial.label} {dial.number} {dial.unit}, {dial.problem or dial.note}" for dial in dials]
        if stale:
            parts.append(translate("Dials", "These are the last good figures."))
        self.setAccessibleName("; ".join(parts) or why_not)
        self.update()

    def arrange(self, width: int) -> int:
        """The height that it needs."""
        now = look()
        if not self._dials:
            return now.px(CELL) if self._why_not else 0
        if self._beside(width):
            problems = any(dial.problem for dial in self._dials)
            return now.px(CELL + (16 if problems else 0))
        return now.px(LINE) * len(self._dials) + sum(now.px(18) for dial in self._dials if dial.problem)

    def _widths(self, now: Look) -> list[int]:
        """What each cell needs so that nothing in it is cut off."""
        return [
            max(
                now.width(dial.label, now.caption),
                now.width(dial.number, now.dial) + now.px(8) + now.width(dial.unit, now.dial_unit),
                now.width(dial.note, now.caption),
                now.width(dial.problem, now.caption_bold),
            )
            + now.px(26)
            for dial in self._dials
        ]

    def _beside(self, width: int) -> bool:
        """Whether the cells stand side by side: where the margin is wide and they all fit."""
        now = look()
        return width / now.scale > 460 and sum(self._widths(now)) <= width

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Cells or lines."""
        now = look()
        with QPainter(self) as painter:
            if not self._dials:
                self._paint_nothing(painter, now)
            elif self._beside(self.width()):
                self._paint_cells(painter, now)
            else:
                self._paint_lines(painter, now)

    def _paint_nothing(self, painter: QPainter, now: Look) -> None:
        """A dash, and why."""
        side = now.px(16)
        number = QRect(side, now.px(6), now.px(40), now.px(36))
        ink.write(painter, now, number, NOTHING, now.dial)
        text = QRect(side, now.px(44), self.width() - 2 * side, now.px(34))
        ink.paragraph(painter, now, text, self._why_not, now.body, "verm")

    def _paint_number(self, painter: QPainter, now: Look, place: QRect, dial: Dial) -> int:
        """The figure with its unit; its width."""
        token = "verm" if dial.problem else "pencil" if self._stale else "ink"
        number = dial.number or NOTHING
        wide = ink.write(painter, now, place, number, now.dial, token)
        unit = place.adjusted(wide + now.px(8), now.px(7), 0, 0)
        beside = ink.write(painter, now, unit, dial.unit, now.dial_unit, token)
        if self._stale:
            ink.dotted_under(painter, now, place.left(), place.left() + wide, place.bottom() - now.px(1))
        return wide + now.px(8) + beside

    def _paint_cells(self, painter: QPainter, now: Look) -> None:
        """Side by side, sized by what stands in them."""
        needs = self._widths(now)
        spare = (self.width() - sum(needs)) / len(needs)
        left = 0.0
        for index, (dial, need) in enumerate(zip(self._dials, needs, strict=True)):
            wide = need + spare
            inside = QRect(round(left) + now.px(14), 0, round(wide) - now.px(16), self.height())
            if index:
                ink.upright(painter, now.colour("rule"), round(left), 0, self.height())
            label = QRect(inside.left(), now.px(7), inside.width(), now.px(16))
            ink.write(painter, now, label, dial.label, now.caption, "pencil")
            number = QRect(inside.left(), now.px(23), inside.width(), now.px(36))
            self._paint_number(painter, now, number, dial)
            note = QRect(inside.left(), now.px(61), inside.width(), now.px(16))
            ink.write(painter, now, note, dial.note, now.caption, "pencil")
            problem = QRect(inside.left(), now.px(78), inside.width(), now.px(16))
            ink.write(painter, now, problem, dial.problem, now.caption_bold, "verm")
            left += wide
        ink.horizontal(painter, now.colour("rule"), 0, self.width(), self.height() - 1)

    def _stacked(self, now: Look, room: int) -> bool:
        """Whether a note does not fit behind its figure and all of them go under their labels."""
        label = max(now.width(dial.label, now.body) for dial in self._dials) + now.px(18)
        return any(
            label + self._figure_width(now, dial) + now.px(10) + now.width(dial.note, now.caption) > room
            for dial in self._dials
        )

    @staticmethod
    def _figure_width(now: Look, dial: Dial) -> int:
        """How wide figure and unit are together."""
        return now.width(dial.number, now.dial) + now.px(8) + now.width(dial.unit, now.dial_unit)

    def _paint_lines(self, painter: QPainter, now: Look) -> None:
        """One under the other: label, figure, note; a long note goes under the label."""
        side, top = now.px(14), 0
        stacked = self._stacked(now, self.width() - 2 * side)
        texts = [now.width(dial.label, now.body) for dial in self._dials]
        if stacked:
            room = self.width() - 2 * side - max(self._figure_width(now, dial) for dial in self._dials)
            notes = [min(now.width(dial.note, now.caption), room - now.px(14)) for dial in self._dials]
            texts += notes
        label_wide = max(texts) + now.px(18 if not stacked else 14)
        for index, dial in enumerate(self._dials):
            high = now.px(LINE)
            row = QRect(side, top, self.width() - 2 * side, high)
            number = row.adjusted(label_wide, now.px(4), 0, -now.px(4))
            wide = self._paint_number(painter, now, number, dial)
            if stacked:
                upper = QRect(side, top + now.px(5), label_wide, now.px(18))
                lower = QRect(side, top + now.px(23), label_wide - now.px(6), now.px(16))
                ink.write(painter, now, upper, dial.label, now.body)
                ink.write(painter, now, lower, dial.note, now.caption, "pencil")
            else:
                ink.write(painter, now, row, dial.label, now.body)
                note = row.adjusted(label_wide + wide + now.px(10), 0, 0, 0)
                ink.write(painter, now, note, dial.note, now.caption, "pencil", ink.RIGHT)
            top += high
            if dial.problem:
                line = QRect(side, top - now.px(4), self.width() - 2 * side, now.px(18))
                ink.write(painter, now, line, dial.problem, now.caption_bold, "verm")
                top += now.px(18)
            heavy = index == len(self._dials) - 1
            ink.horizontal(
                painter, now.colour("ink" if heavy else "rule"), side, self.width() - side, top - 1
            )
