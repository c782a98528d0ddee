"""What would mend the step: each offer was reckoned whole, and pressing it writes it in as one edit."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.remarks import INDENT
from jobsheet.gui.forms.buttons import Button
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.reckoning.answers.all_answers import Offer

LINE = 36

translate = QCoreApplication.translate


def _caption(sort: str) -> str:
    """What an offer is for, in the left column."""
    return {
        "carry": translate("Offers", "slower speed that works"),
        "hand": translate("Offers", "to suit hand feed"),
        "passes": translate("Offers", "in layers"),
    }[sort]


class OfferLines(QWidget):
    """One line an offer: what it is for, what it is with its figures, and a button that writes it in."""

    taken = Signal(object)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.items: tuple[Offer, ...] = ()
        self.buttons: list[Button | None] = []
        self._heights: list[int] = []
        self.setAccessibleName(translate("Offers", "What would mend this step"))
        self.hide()

    def put(self, items: tuple[Offer, ...]) -> bool:
        """Show these; whether anything changed."""
        if items == self.items:
            return False
        self.items = items
        for old in self.buttons:
            if old is not None:
                old.hide()
                old.deleteLater()
        self.buttons = [self._button(item) for item in items]
        self.setVisible(bool(items))
        self.update()
        return True

    def _button(self, item: Offer) -> Button | None:
        if not item.edits:
            return None
        button = Button(translate("Offers", "Use this"), self, in_row=True)
        button.setAccessibleName(translate("Offers", "Write in: {words}").format(words=item.words))
        button.clicked.connect(lambda _=False, one=item: self.taken.emit(one))
        button.show()
        return button

    def stops(self) -> list[QWidget]:
        """What Tab stops at."""
        return [button for button in self.buttons if button is not None]

    def _wide(self, button: Button | None) -> int:
        now = look()
        taken = button.sizeHint().width() if button is not None else 0
        return self.width() - now.px(INDENT) - taken - now.px(22)

    def arrange(self, width: int) -> int:
        """Place the buttons; the height needed at a width."""
        now = look()
        self.resize(width, self.height())
        self._heights, top = [], 0
        for item, button in zip(self.items, self.buttons, strict=True):
            words = ink.paragraph_height(now, item.words, now.body, self._wide(button))
            high = max(now.px(LINE), words + now.px(14))
            if button is not None:
                hint = button.sizeHint()
                button.setGeometry(
                    width - now.px(10) - hint.width(),
                    top + (high - hint.height()) // 2,
                    hint.width(),
                    hint.height(),
                )
            self._heights.append(top)
            top += high
        return top

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """A line above each, its caption in pencil where it is another, its words."""
        now = look()
        last = ""
        with QPainter(self) as painter:
            for top, item, button in zip(self._heights, self.items, self.buttons, strict=False):
                ink.horizontal(painter, now.colour("rule"), 0, self.width(), top)
                if item.sort != last:
                    caption = QRect(now.px(14), top + now.px(9), now.px(INDENT - 18), now.px(18))
                    ink.write(painter, now, caption, _caption(item.sort), now.label, "pencil")
                last = item.sort
                text = QRect(now.px(INDENT), top + now.px(9), self._wide(button), self.height())
                ink.paragraph(painter, now, text, item.words, now.body)
