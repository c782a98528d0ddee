"""A set-up or a job without operations: a fact, an advice, a button."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.line import LineWidget
from jobsheet.gui.column.measures import columns
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.storage.kept.recent import Recent, recent

translate = QCoreApplication.translate
#: So many of the last jobs are offered.
RECENTS = 3


class EmptyLine(LineWidget):
    """A set-up or a job without operations: a fact, an advice, a button."""

    pressed = Signal()
    recent_pressed = Signal(str)

    def __init__(self, key: str, parent: QWidget) -> None:
        super().__init__(key, parent)
        self.fact = translate("Rows", "No operation yet")
        self.advice = translate("Rows", "Start with the face that all others are judged from.")
        self.setAccessibleName(f"{self.fact}. {self.advice}")
        self.button = Button(translate("Rows", "Add a facing cut"), self, in_row=True)
        self.button.clicked.connect(self.pressed)
        self.recents = [self._link(one) for one in recent() if one.there][:RECENTS]

    def _link(self, one: Recent) -> Button:
        """One of the last jobs."""
        words = one.part or Path(one.path).name
        made = Button(words, self, Manner.LINK)
        made.setAccessibleName(translate("Rows", "Open {job}").format(job=words))
        made.clicked.connect(lambda: self.recent_pressed.emit(one.path))
        return made

    def height_at_100(self) -> int:
        """Room for three lines."""
        return 112

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Put the button under the words."""
        now = look()
        hint = self.button.sizeHint()
        left = columns(now, self.width()).text - now.px(4)
        self.button.setGeometry(left, now.px(62), hint.width(), hint.height())
        left += hint.width() + now.px(14)
        if self.recents:
            left += now.width(self._or(), now.body) + now.px(6)
        for link in self.recents:
            hint = link.sizeHint()
            link.setVisible(left + hint.width() < self.width())
            link.setGeometry(left, now.px(62), hint.width(), hint.height())
            left += hint.width() + now.px(8)

    @staticmethod
    def _or() -> str:
        return translate("Rows", "or open")

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
            if self.recents and not self.recents[0].isHidden():
                beside = QRect(
                    self.button.geometry().right() + now.px(14),
                    now.px(62),
                    self.width(),
                    self.button.height(),
                )
                ink.write(painter, now, beside, self._or(), now.body, "pencil")
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), self.height() - 1)
