"""A line where something happened, with what can be done about it: `140 removed. Undo`."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.line import LineWidget
from jobsheet.gui.column.measures import HEADING, columns
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

translate = QCoreApplication.translate


class NoticeLine(LineWidget):
    """A line where something happened, with what can be done about it: `140 removed. Undo`."""

    def __init__(
        self, key: str, text: str, offers: tuple[tuple[str, Callable[[], None]], ...], parent: QWidget
    ) -> None:
        super().__init__(key, parent)
        self.text = text
        self.setAccessibleName(text)
        self.buttons: list[Button] = []
        for label, act in offers:
            button = Button(label, self, Manner.LINK)
            button.clicked.connect(act)
            self.buttons.append(button)

    def height_at_100(self) -> int:
        """The height of a closed row, or of a button where that is more."""
        return HEADING

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Put the words that can be pressed behind the text."""
        now = look()
        taken = sum(button.sizeHint().width() for button in self.buttons) + now.px(14)
        left = columns(now, self.width()).text + now.width(self.text, now.body) + now.px(8)
        left = min(left, self.width() - taken)
        for button in self.buttons:
            hint = button.sizeHint()
            button.setGeometry(left, (self.height() - hint.height()) // 2, hint.width(), hint.height())
            left += hint.width()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """One line of text."""
        now = look()
        at = columns(now, self.width())
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            end = self.buttons[0].x() if self.buttons else self.width() - now.px(14)
            place = QRect(at.text, 0, end - at.text, self.height())
            ink.write(painter, now, place, self.text, now.body, "pencil")
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), self.height() - 1)
