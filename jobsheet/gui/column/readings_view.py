"""What the open step sets at the dials: turns and divisions from the zero, the line
to stop at, and how far off it is.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.remarks import INDENT
from jobsheet.gui.forms.plain_widgets import PaintedText
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.machine.dial_readings import Stop, error_text
from jobsheet.reckoning.answers.readings import Readings

ROW = 20
#: So many places are shown; a pattern of more is read on the sheet.
MOST = 8

translate = QCoreApplication.translate


def _cell(stop: Stop | None, axis: str, units: str) -> tuple[str, str]:
    """The reading in ink, and what stands behind it in pencil."""
    if stop is None:
        return "", ""
    error = error_text(stop.error, units)
    off = translate("Readings", "exact") if error == "0" else f"{error} {units}"
    behind = f"{stop.line}, {off}"
    if stop.drawing:
        behind = translate("Readings", "{behind} · drawing {size}").format(behind=behind, size=stop.drawing)
    return f"{axis} {stop.dial}", behind


def lines_of(readings: Readings, units: str) -> list[tuple[str, str, str, str]]:
    """Each line as reading and words, twice: x and y, or one depth alone."""
    lines = [(*_cell(at.x, "X", units), *_cell(at.y, "Y", units)) for at in readings.places[:MOST]]
    lines += [(*_cell(each, readings.depth_handle, units), "", "") for each in readings.depths[:MOST]]
    return lines


def warnings_of(readings: Readings, units: str) -> tuple[str, ...]:
    """What to beware of at the handles: what comes from above, walls on other turns, whole turns near by."""
    said = []
    if back := sorted({axis.upper() for at in readings.places for axis in at.back}):
        words = translate("Readings", "From above on {axes}: go back past it, then come up.")
        said.append(words.format(axes=translate("Readings", " and ").join(back)))
    if readings.wall is not None:
        out = (
            f"{readings.wall.comes_out * 1e3:.3f} mm"
            if units == "mm"
            else f"{readings.wall.comes_out / 0.0254:.4f} in"
        )
        words = translate("Readings", "On this line the wall comes out at {size}, along {axis}.")
        said.append(words.format(size=out, axis=readings.wall.handle.upper()))
    said += [f"{words[:1].upper()}{words[1:]}." for words in readings.warnings]
    if readings.depth_zero:
        said.append(f"{readings.depth_handle[:1].upper()}{readings.depth_handle[1:]}: {readings.depth_zero}.")
    return (*said, *left_out(readings))


def left_out(readings: Readings) -> tuple[str, ...]:
    """What stands no longer in the list, and where it does."""
    said = []
    if (more := len(readings.places) - MOST) > 0:
        said.append(
            translate("Readings", "{count} more places: on the sheet and in “jobsheet dials”.").format(
                count=more
            )
        )
    if (more := len(readings.depths) - MOST) > 0:
        said.append(
            translate(
                "Readings", "{count} more layers, {first} to {last}: on the sheet and in “jobsheet dials”."
            ).format(count=more, first=readings.depths[MOST].dial, last=readings.depths[-1].dial)
        )
    return tuple(said)


class ReadingsView(PaintedText):
    """A caption and a line a place; what to beware of stands under them."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setTextFormat(QtCore.Qt.TextFormat.PlainText)
        self._lines: list[tuple[str, str, str, str]] = []
        self._warnings: tuple[str, ...] = ()
        self.hide()

    def put(self, readings: Readings | None, units: str) -> bool:
        """Show the readings of a step; whether anything changed."""
        lines = lines_of(readings, units) if readings is not None else []
        warnings = warnings_of(readings, units) if readings is not None else ()
        if (lines, warnings) == (self._lines, self._warnings):
            return False
        self._lines, self._warnings = lines, warnings
        self.setVisible(bool(lines))
        spoken = "; ".join(" ".join(part for part in line if part) for line in lines)
        self.setAccessibleName(
            translate("Readings", "Dials: {lines}. {warnings}").format(
                lines=spoken, warnings=" ".join(warnings)
            )
        )
        self.update()
        return True

    def _stacked(self, width: int) -> bool:
        """Whether x and y stand one under the other."""
        now = look()
        need = 0
        for one, behind, other, after in self._lines:
            need = max(need, now.width(one, now.bold) + now.width(behind, now.caption))
            need = max(need, now.width(other, now.bold) + now.width(after, now.caption))
        return 2 * (need + now.px(18)) > width - now.px(INDENT)

    def arrange(self, width: int) -> int:
        """The height needed."""
        if not self._lines:
            return 0
        now = look()
        self.resize(width, self.height())
        twice = self._stacked(width)
        rows = sum(2 if twice and line[2] else 1 for line in self._lines)
        high = now.px(7) + rows * now.px(ROW)
        wide = width - now.px(INDENT) - now.px(14)
        for words in self._warnings:
            high += ink.paragraph_height(now, words, now.caption, wide)
        return high + now.px(6)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The lines, readings in one column, what stands behind them in another."""
        if not self._lines:
            return
        now = look()
        with QPainter(self) as painter:
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), 0)
            caption = QRect(now.px(14), now.px(6), now.px(INDENT - 18), now.px(18))
            ink.write(painter, now, caption, translate("Readings", "dials"), now.label, "pencil")
            twice = self._stacked(self.width())
            left, top, high = now.px(INDENT), now.px(5), now.px(ROW)
            half = (self.width() - left) // 2
            wide = [
                max((now.width(line[at], now.bold) for line in self._lines), default=0) + now.px(8)
                for at in (0, 2)
            ]
            for one, behind, other, after in self._lines:
                for index, (dial, words) in enumerate(((one, behind), (other, after))):
                    if not dial:
                        continue
                    if twice and index:
                        top += high
                    x = left + (0 if twice else index * half)
                    room = (self.width() - x) if twice or index or not other else half
                    column = max(wide) if twice else wide[index]
                    ink.write(painter, now, QRect(x, top, room, high), dial, now.bold)
                    place = QRect(x + column, top, room - column - now.px(4), high)
                    ink.write(painter, now, place, words, now.caption, "pencil")
                top += high
            room = self.width() - left - now.px(14)
            for words in self._warnings:
                box = QRect(left, top, room, self.height())
                top += ink.paragraph(painter, now, box, words, now.caption, "pencil")
