"""The beat of the handle: ten seconds as a line, a headed stroke for each whole
turn, and a knock to practise by.
"""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QElapsedTimer, QRect, QTimer
from PySide6.QtGui import QHideEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QApplication, QWidget

from jobsheet.gui.forms.buttons import Button
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import Look, look
from jobsheet.operations.kind import Dial

translate = QCoreApplication.translate


BEAT = 58


#: Seconds that the beat shows.
SPAN = 10.0


def seconds_a_turn(dials: tuple[Dial, ...]) -> float | None:
    """The pace of the handle that is wound evenly; None where there is none, as through a lever."""
    for dial in dials:
        if dial.unit == "s a turn" and not dial.problem:
            try:
                return float(dial.number.replace(",", "."))
            except ValueError:
                return None
    return None


class BeatView(QWidget):
    """A line of ten seconds with a stroke for each turn; *Practise* lets a stroke travel along it."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._pace: float | None = None
        self._since = QElapsedTimer()
        self._turns = 0
        self._timer = QTimer(self)
        self._timer.setInterval(33)
        self._timer.timeout.connect(self._tick)
        self.button = Button(translate("Beat", "Practise"), self, in_row=False)
        hover(
            self.button,
            translate("Beat", "Only with the spindle switched off: wind the handle in time. Space stops it."),
        )
        self.button.setCheckable(True)
        self.button.toggled.connect(self._toggled)

    def put(self, pace: float | None) -> None:
        """Show the beat of a pace [s a turn]."""
        if pace == self._pace:
            return
        self._pace = pace
        if pace:
            self.setAccessibleName(
                translate("Beat", "Beat of the handle: one turn every {seconds} s").format(seconds=pace)
            )
        else:
            self.button.setChecked(False)
        self.update()

    def _toggled(self, on: bool) -> None:
        """Start or stop practising."""
        self.button.setText(translate("Beat", "Stop") if on else translate("Beat", "Practise"))
        self.button.setAccessibleName(self.button.text())
        self._turns = 0
        if on:
            self._since.start()
            self._timer.start()
        else:
            self._timer.stop()
        self.update()

    def hideEvent(self, event: QHideEvent) -> None:  # noqa: N802
        """Nobody hears a knock from a closed row."""
        self.button.setChecked(False)
        super().hideEvent(event)

    def _tick(self) -> None:
        """Move the stroke; knock on the whole turn."""
        if self._pace:
            turns = int(self._since.elapsed() / 1000 / self._pace)
            if turns > self._turns:
                QApplication.beep()
            self._turns = turns
        self.update()

    def arrange(self, width: int) -> int:
        """The height that it needs; none without a pace."""
        if not self._pace:
            self.button.hide()
            return 0
        hint = self.button.sizeHint()
        self.button.setGeometry(
            width - hint.width() - look().px(10),
            look().px(BEAT) // 2 - hint.height() // 2,
            hint.width(),
            hint.height(),
        )
        self.button.show()
        return look().px(BEAT)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Strokes for turns and quarters over a line of seconds."""
        if not self._pace:
            return
        now = look()
        left = now.px(24)
        right = self.button.x() - now.px(18)
        base = now.px(35)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            pencil, dark = now.colour("pencil"), now.colour("ink")
            ink.horizontal(painter, now.colour("edge"), left, right, base)
            scale = (right - left) / SPAN
            for second in range(0, 11, 2):
                ink.upright(painter, pencil, left + second * scale, base, base + now.px(4))
                text = f"{second} s" if second == 10 else str(second)
                place = QRect(
                    round(left + second * scale) - now.px(20), base + now.px(5), now.px(40), now.px(14)
                )
                ink.write(painter, now, place, text, now.caption, "pencil", ink.CENTRE)
            self._paint_strokes(painter, now, left, base, scale)
            if self._timer.isActive():
                at = (self._since.elapsed() / 1000) % SPAN
                ink.upright(
                    painter,
                    now.colour("bluemark"),
                    left + at * scale - 1,
                    now.px(2),
                    base + now.px(2),
                    now.px(3),
                )
            ink.horizontal(painter, dark, now.px(14), self.width() - now.px(14), self.height() - 1)

    def _paint_strokes(self, painter: QPainter, now: Look, left: float, base: int, scale: float) -> None:
        """Headed strokes for whole turns, short ones for quarters, half a turn a little taller."""
        pace = self._pace or SPAN
        dark = now.colour("ink")
        quarter = 0
        crowded = pace * scale < now.px(14)
        while quarter * pace / 4 <= SPAN + 1e-9:
            x = left + quarter * pace / 4 * scale
            if quarter % 4 == 0:
                ink.upright(painter, dark, x - now.px(1), now.px(8), base, now.px(2.4))
                painter.setBrush(dark)
                painter.setPen(dark)
                radius = now.px(3.5)
                painter.drawEllipse(QRect(round(x) - radius, now.px(8) - radius, 2 * radius, 2 * radius))
                turn = quarter // 4
                room = pace * scale - now.px(12)
                words = translate("Beat", "turn {number}").format(number=turn)
                if now.width(words, now.caption_bold) > room:
                    words = str(turn)
                if turn and now.width(words, now.caption_bold) < room:
                    place = QRect(round(x) + now.px(8), 0, round(room), now.px(16))
                    ink.write(painter, now, place, words, now.caption_bold, "pencil")
            elif not crowded:
                high = 14 if quarter % 2 == 0 else 8
                ink.upright(painter, now.colour("pencil"), x, base - now.px(high), base)
            quarter += 1
