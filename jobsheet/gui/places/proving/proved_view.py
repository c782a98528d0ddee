"""What a machine has shown: the chart of chances, and under it one conclusion."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.drawing.drawn import Drawing
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.drawn_lines import SCALE, paint
from jobsheet.gui.ink.look import look
from jobsheet.gui.places.proving.proving_desk import Conclusion, ProvingDesk

translate = QCoreApplication.translate
PAD, HEAD = 14, 36


class Proved(QWidget):
    """The chart, and the conclusion under it."""

    CHART = 400

    def __init__(
        self, parent: QWidget, desk: ProvingDesk, take_back: Callable[[], None], record: Callable[[], None]
    ) -> None:
        super().__init__(parent)
        self.record = Button(translate("Proving", "All trials of the machine"), self, in_row=True)
        self.record.clicked.connect(record)
        self.back = Button(translate("Proving", "Take back this trial"), self, Manner.LINK)
        self.back.clicked.connect(take_back)
        self._desk = desk
        self._conclusion = Conclusion("")
        self._chart: tuple[tuple[int, int], Drawing] | None = None
        self._below = 0

    def put(self, desk: ProvingDesk) -> None:
        """Show what the machine has shown."""
        self._desk = desk
        self._conclusion = desk.conclusion()
        self._chart = None
        self.back.setVisible(bool(desk.done))
        self.setAccessibleName(" ".join((self._conclusion.head, *self._conclusion.lines)))
        self.update()

    def _words_high(self, width: int) -> int:
        now = look()
        inside = width - 2 * now.px(PAD)
        high = ink.paragraph_height(now, self._conclusion.head, now.title, inside) + now.px(28)
        for words in self._conclusion.lines:
            high += ink.paragraph_height(now, words, now.body, inside) + now.px(4)
        return high + (self.back.sizeHint().height() if self._desk.done else 0) + now.px(10)

    def _charted(self) -> bool:
        ladder = self._desk.ladder
        return ladder is not None and bool(ladder.rungs)

    def needed(self, width: int) -> int:
        """The height that it needs at a width."""
        now = look()
        chart = now.px(self.CHART) if self._charted() else 0
        return now.px(HEAD) + chart + self._words_high(width)

    def arrange(self) -> None:
        """The button at the foot."""
        now = look()
        self._below = self.height() - self._words_high(self.width())
        if not self._charted():
            self._below = now.px(HEAD) + 1
        hint = self.back.sizeHint()
        foot = self.height() - hint.height() - now.px(8)
        if not self._charted():
            foot = self._below + self._words_high(self.width()) - hint.height()
        self.back.setGeometry(now.px(PAD) - now.px(8), foot, hint.width(), hint.height())
        hint = self.record.sizeHint()
        at = self.width() - now.px(8) - hint.width()
        self.record.setGeometry(at, (now.px(HEAD) - hint.height()) // 2, hint.width(), hint.height())

    def _drawing(self, width: int, high: int) -> Drawing | None:
        ladder = self._desk.ladder
        before = self._desk.before()
        if ladder is None or before is None:
            return None
        if self._chart is None or self._chart[0] != (width, high):
            from jobsheet.report.charts import chance_chart

            factor = SCALE * look().scale
            drawing = chance_chart(
                ladder, before, self._desk.after(), self._desk.same_cuts(), width / factor, high / factor,
                planned=self._conclusion.planned,
            )  # fmt: skip
            self._chart = ((width, high), drawing)
        return self._chart[1]

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Heading, chart, and the conclusion under a heavy rule."""
        now = look()
        pad = now.px(PAD)
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            ink.frame(painter, self.rect(), now.colour("rule"))
            head = QRect(pad, 0, self.width(), now.px(HEAD))
            ink.write(painter, now, head, translate("Proving", "What the machine has shown"), now.head)
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), now.px(HEAD))
            if self._charted():
                width, high = self.width() - 2 * pad, self._below - now.px(HEAD) - now.px(16)
                drawing = self._drawing(width, high)
                if drawing is not None:
                    paint(painter, now, drawing, pad, now.px(HEAD) + now.px(8))
            foot = QRect(0, self._below, self.width(), self.height() - self._below)
            painter.fillRect(foot, now.colour("field"))
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), self._below, 2)
            box = QRect(pad, self._below + now.px(12), self.width() - 2 * pad, self.height())
            box.translate(0, ink.paragraph(painter, now, box, self._conclusion.head, now.title) + now.px(6))
            for words in self._conclusion.lines:
                box.translate(0, ink.paragraph(painter, now, box, words, now.body) + now.px(4))
