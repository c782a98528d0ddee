"""Trials that do not fit the others, each with its sentence and the three answers that there are."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.buttons import Button
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.places.proving.record_rows import RecordRow
from jobsheet.reckoning.odd_trials import Odd

translate = QCoreApplication.translate
PAD = 12


class OddView(QWidget):
    """One trial that does not fit: what it says against the others, and what may be done."""

    strike_wanted = Signal(object)
    keep_wanted = Signal(object)
    changed_wanted = Signal(object)

    def __init__(self, odd: Odd, row: RecordRow | None, parent: QWidget) -> None:
        super().__init__(parent)
        self.odd = odd
        self._head = translate("Record", "{which} does not fit the others").format(
            which=f"{row.when}, {row.named()}" if row is not None else odd.trial.date
        )
        self.setAccessibleName(f"{self._head}. {odd.sentence}")
        self.strike = Button(translate("Record", "Strike it"), self, in_row=True)
        self.keep = Button(translate("Record", "It was so"), self, in_row=True)
        self.then = Button(translate("Record", "The machine changed then"), self, in_row=True)
        for button, signal in (
            (self.strike, self.strike_wanted),
            (self.keep, self.keep_wanted),
            (self.then, self.changed_wanted),
        ):
            button.clicked.connect(lambda _=False, signal=signal: signal.emit(self.odd))

    def arrange(self, width: int) -> int:
        """Place the answers under the words; the height needed."""
        now = look()
        inside = width - 2 * now.px(PAD)
        top = now.px(8) + ink.paragraph_height(now, self._head, now.bold, inside) + now.px(2)
        top += ink.paragraph_height(now, self.odd.sentence, now.body, inside) + now.px(4)
        left = now.px(PAD) - now.px(4)
        for button in (self.strike, self.keep, self.then):
            hint = button.sizeHint()
            if left + hint.width() > width and left > now.px(PAD):
                left, top = now.px(PAD) - now.px(4), top + hint.height()
            button.setGeometry(left, top, hint.width(), hint.height())
            left += hint.width()
        return top + self.then.sizeHint().height() + now.px(6)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The words, with a heavy stroke at the left: something is asked."""
        now = look()
        inside = self.width() - 2 * now.px(PAD)
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("field"))
            painter.fillRect(QRect(0, 0, now.px(4), self.height()), now.colour("vermmark"))
            box = QRect(now.px(PAD), now.px(8), inside, self.height())
            box.translate(0, ink.paragraph(painter, now, box, self._head, now.bold) + now.px(2))
            ink.paragraph(painter, now, box, self.odd.sentence, now.body)
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), self.height() - 1)
