"""A set-up or a job without operations: a fact, an advice, a button."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.line import LineWidget
from jobsheet.gui.column.measures import columns
from jobsheet.gui.forms.buttons import Button
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

translate = QCoreApplication.translate


class EmptyLine(LineWidget):
    """A set-up or a job without operations: a fact, an advice, a button."""

    pressed = Signal()

    def __init__(self, key: str, parent: QWidget) -> None:
        super().__init__(key, parent)
        self.fact = translate("Rows", "No operation yet")
        self.advice = translate("Rows", "Start with the face that all others are judged from.")
        self.setAccessibleName(f"{self.fact}. {self.advice}")
        self.button = Button(translate("Rows", "Add a facing cut"), self, in_row=True)
        self.button.clicked.connect(self.pressed)

    def height_at_100(self) -> int:
        """Room for three lines."""
        return 112

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Put the button under the words."""
        now = look()
        hint = self.button.sizeHint()
        left = columns(now, self.width()).text - now.px(4)
        self.button.setGeometry(left, now.px(62), hint.width(), hint.height())

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Fact in bold, advice under it."""
        now = look()
        at = columns(now, self.width())
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            place = QRect(at.text, now.px(12), self.width() - at.text - now.px(14), now.px(22))
            ink.write(painter, now, place, self.fact, now.head)
            place.translate(0, now.px(24))
            ink.write(painter, now, place, self.advice, now.body, "pencil")
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), self.height() - 1)
