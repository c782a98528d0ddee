"""What a machine has shown: the chart of chances, and under it one conclusion."""

from __future__ import annotations

from collections.abc import Callable

from msgspec.structs import replace
from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.drawing.drawn import Drawing
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.drawn_lines import SCALE, paint
from jobsheet.gui.ink.look import look
from jobsheet.gui.places.proving.proving_desk import Conclusion, ProvingDesk
from jobsheet.model.trials import ABOUT
from jobsheet.reckoning.ladder.ladder_expected import words_of
from jobsheet.reckoning.ladder.rung import Ladder

translate = QCoreApplication.translate
PAD, HEAD = 14, 36


class Proved(QWidget):
    """The chart, and the conclusion under it."""

    CHART = 400

    def __init__(
        self,
        parent: QWidget,
        desk: ProvingDesk,
        take_back: Callable[[], None],
        record: Callable[[], None],
        narrow: Callable[[], None],
    ) -> None:
        super().__init__(parent)
        #: The finer ladder that is offered, once it was worked out.
        self.finer: Ladder | None = None
        self.narrow = Button(translate("Proving", "Narrow it"), self, Manner.FILLED)
        self.narrow.clicked.connect(narrow)
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
        if self.finer is not None and self.finer.expected is not None:
            words = translate("Proving", "A finer ladder: {words}").format(
                words=words_of(self.finer.expected)
            )
            self._conclusion = replace(self._conclusion, lines=(*self._conclusion.lines, words))
        self.narrow.setVisible(self.finer is not None)
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
        buttons = bool(self._desk.done) or self.finer is not None
        return high + (self.narrow.sizeHint().height() if buttons else 0) + now.px(10)

    def _charted(self) -> bool:
        return self._drawn() is not None

    def _drawn(self) -> Ladder | None:
        """The ladder whose chart is shown: where none was made that of the finer
        one, which is of the very same cuts.
        """
        ladder = self._desk.ladder
        return ladder if ladder is not None and ladder.rungs else self.finer

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
        left, high = now.px(PAD) - now.px(4), self.narrow.sizeHint().height()
        foot = self.height() - high - now.px(8)
        if not self._charted():
            foot = self._below + self._words_high(self.width()) - high
        for button in (self.narrow, self.back):
            if button.isHidden():
                continue
            hint = button.sizeHint()
            button.setGeometry(left, foot + (high - hint.height()) // 2, hint.width(), hint.height())
            left += hint.width() + now.px(4)
        hint = self.record.sizeHint()
        at = self.width() - now.px(8) - hint.width()
        self.record.setGeometry(at, (now.px(HEAD) - hint.height()) // 2, hint.width(), hint.height())

    def _drawing(self, width: int, high: int) -> Drawing | None:
        ladder = self._drawn()
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
            wide = ink.write(painter, now, head, translate("Proving", "What the machine has shown"), now.head)
            self._write_counted(painter, head.translated(wide + now.px(10), 0))
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

    def _write_counted(self, painter: QPainter, head: QRect) -> None:
        """Beside the heading what the upright axis counts, where there is room."""
        ladder = self._drawn()
        if ladder is None:
            return
        from jobsheet.report.charts import chance_words

        now = look()
        limit = ABOUT.get(ladder.process, "spindle-torque")
        room = QRect(head.left(), 0, self.record.x() - head.left() - now.px(8), head.height())
        words = ink.fitting(now, (chance_words(ladder, limit), ""), now.caption, room.width())
        ink.write(painter, now, room, words, now.caption, "pencil")
