"""Under the steps: what one would change, in ready words, as many as one likes, and one line of one's own."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.places.ran.big_button import GAP, HIGH, BigButton, BigField, heading
from jobsheet.gui.places.ran.ran_desk import RanDesk
from jobsheet.model.what_ran import CHANGES

translate = QCoreApplication.translate
HEAD, SIDE = 46, 28
#: More than one line of a sheet holds, in letters.
LONGEST = 200


class RanChanges(QWidget):
    """Words to press, and a line."""

    said = Signal()

    def __init__(self, desk: RanDesk, parent: QWidget) -> None:
        super().__init__(parent)
        self._desk = desk
        self.words = {word: BigButton(word, self) for word in CHANGES}
        for word, button in self.words.items():
            button.setAccessibleName(translate("Ran", "Would change: {word}").format(word=word))
            button.clicked.connect(lambda _=False, word=word: self._change(word))
        self.note = BigField(translate("Ran", "Would change, in your own words"), self)
        self.note.setPlaceholderText(translate("Ran", "in your own words"))
        self.note.setMaxLength(LONGEST)
        self.note.textEdited.connect(self._note)

    def _change(self, word: str) -> None:
        self._desk.change(word)
        self.said.emit()

    def _note(self, text: str) -> None:
        self._desk.note(text)
        self.said.emit()

    def put(self) -> None:
        """Show what is chosen."""
        chosen = self._desk.changes
        for word, button in self.words.items():
            button.choose(word in chosen)
        entry = self._desk.said.change
        self.note.put(entry.note if entry is not None else "")

    def arrange(self, width: int) -> int:
        """The words in as many lines as they need, the line under them; the height needed."""
        now = look()
        side, gap, high = now.px(SIDE), now.px(GAP), now.px(HIGH)
        left, top = side, now.px(HEAD)
        for button in self.words.values():
            wide = now.width(button.text(), now.large) + now.px(30)
            if left + wide > width - side and left > side:
                left, top = side, top + high + gap
            button.setGeometry(left, top, wide, high)
            left += wide + gap
        top += high + gap
        self.note.setGeometry(side, top, width - 2 * side, high)
        return top + high + now.px(14)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """An ink rule, and the heading."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            ink.horizontal(painter, now.colour("ink"), 0, self.width(), 0)
            place = QRect(now.px(SIDE), 0, self.width() - 2 * now.px(SIDE), now.px(HEAD))
            heading(painter, place, translate("Ran", "Would change"), translate("Ran", "as many as you like"))
