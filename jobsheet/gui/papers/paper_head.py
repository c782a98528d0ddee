"""The head of a paper's window: its title, one sentence on how it stands, and the buttons."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look
from jobsheet.storage.typed_paper import Paper

translate = QCoreApplication.translate
#: Height of the title with one sentence [px at 100 %].
HEAD = 58


class PaperHead(QWidget):
    """Title, what is to be said, and the buttons; `title` and `state` are
    asked each time it is shown anew.
    """

    close_wanted = Signal()
    save_wanted = Signal()
    draft_taken = Signal(object)
    draft_dropped = Signal()
    #: It may be higher or lower now.
    changed = Signal()

    def __init__(
        self, title: Callable[[], str], state: Callable[[], tuple[str, bool]], parent: QWidget
    ) -> None:
        super().__init__(parent)
        self._title, self._asked = title, state
        self._draft: Paper | None = None
        self.buttons: list[Button] = []
        self.extra: list[Button] = []
        for text, manner, told in (
            (translate("PaperWindow", "Close"), Manner.PLAIN, self.close_wanted),
            (translate("PaperWindow", "Save"), Manner.FILLED, self.save_wanted),
        ):
            button = Button(text, self, manner)
            button.clicked.connect(lambda _=False, told=told: told.emit())
            self.buttons.append(button)

    def offer(self, draft: Paper) -> None:
        """Offer what was typed and not saved last time."""
        self._draft = draft
        for text, slot in (
            (translate("PaperWindow", "Go on with it"), self._take),
            (translate("PaperWindow", "Throw it away"), self._drop),
        ):
            button = Button(text, self, Manner.LINK)
            button.clicked.connect(slot)
            button.show()
            self.extra.append(button)
        self.refresh()

    def _take(self) -> None:
        draft = self._draft
        self._done()
        if draft is not None:
            self.draft_taken.emit(draft)

    def _drop(self) -> None:
        self._done()
        self.draft_dropped.emit()

    def _done(self) -> None:
        self._draft = None
        for button in self.extra:
            button.hide()
            button.deleteLater()
        self.extra = []
        self.refresh()

    def refresh(self) -> None:
        """Show the state as it is."""
        self.setAccessibleDescription(self._state()[0])
        if self.width() > 0:
            self.changed.emit()
        self.update()

    def _state(self) -> tuple[str, bool]:
        if self._draft is not None:
            return translate(
                "PaperWindow", "Something was typed and not saved when the program ended last time."
            ), False
        return self._asked()

    def arrange(self, width: int) -> int:
        """Place the buttons; the height needed."""
        now = look()
        right = width - now.px(8)
        for button in reversed(self.buttons):
            hint = button.sizeHint()
            right -= hint.width()
            button.setGeometry(right, now.px(4), hint.width(), hint.height())
        left = now.px(10)
        for button in self.extra:
            hint = button.sizeHint()
            button.setGeometry(left, now.px(HEAD - 4), hint.width(), hint.height())
            left += hint.width()
        text = ink.paragraph_height(now, self._state()[0], now.body, width - now.px(44))
        high = max(now.px(HEAD), now.px(40) + text + now.px(8)) + (now.px(32) if self.extra else 0)
        self.resize(width, high)
        return high

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper, heavy rule, title, sentence."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), 0, now.px(2))
            left = now.px(14)
            title = self._title()
            right = self.buttons[0].x() - now.px(8)
            ink.write(painter, now, QRect(left, now.px(6), right - left, now.px(30)), title, now.title)
            sentence, wrong = self._state()
            if wrong:
                signs.draw(painter, "problem-caret", now.tokens.vermmark, left, now.px(42), now.px(13))
                left += now.px(18)
            place = QRect(left, now.px(38), self.width() - left - now.px(14), self.height() - now.px(38))
            ink.paragraph(painter, now, place, sentence, now.body, "verm" if wrong else "pencil")
