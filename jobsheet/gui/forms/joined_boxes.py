"""Joined boxes for a choice of two to four: the chosen one is paper on ink; digits and arrow keys choose."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QEvent, QRectF, QSize, Signal
from PySide6.QtGui import (
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QRadioButton, QWidget

from jobsheet.gui.forms.box_events import belongs_to_field
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look


class Half(QRadioButton):
    """One of the joined boxes; the chosen one is paper on ink."""

    def event(self, event: QEvent) -> bool:
        """Delete on a choice takes out no row."""
        if event.type() == QEvent.Type.ShortcutOverride and belongs_to_field(event):
            event.accept()
            return True
        return super().event(event)

    def sizeHint(self) -> QSize:  # noqa: N802
        """The words in bold with room at the sides."""
        now = look()
        return QSize(now.width(self.text(), now.bold) + now.px(16), now.px(30))

    def hitButton(self, pos: object) -> bool:  # noqa: N802, ARG002
        """The whole box can be pressed, not only its words."""
        return True

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The box, filled when chosen, with the ring of focus in place of its edge."""
        now = look()
        with QPainter(self) as painter:
            chosen = self.isChecked()
            painter.fillRect(self.rect(), now.colour("ink" if chosen else "paper"))
            edge = now.colour("ink" if chosen else "edge")
            painter.setPen(QPen(edge, 1))
            painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
            font, token = (now.bold, "paper") if chosen else (now.body, "ink")
            inside = self.rect().adjusted(now.px(4), 0, -now.px(4), 0)
            ink.write(painter, now, inside, self.text(), font, token, ink.CENTRE)
            if self.hasFocus():
                painter.setPen(QPen(now.colour("bluemark"), now.px(3)))
                painter.drawRect(QRectF(self.rect()).adjusted(1.5, 1.5, -1.5, -1.5))


class Joined(QWidget):
    """Two to four choices side by side; arrow keys move, digits choose."""

    typed = Signal(str)

    def __init__(self, choices: tuple[str, ...], name: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.halves = [Half(choice, self) for choice in choices]
        for number, half in enumerate(self.halves, 1):
            half.setAccessibleName(f"{name}: {half.text()}")
            hover(half, f"{number}")
            half.clicked.connect(self._said)

    def _said(self) -> None:
        """Tell which is chosen now."""
        self.typed.emit(self.text())

    def put(self, text: str) -> None:
        """Show a choice."""
        for half in self.halves:
            half.setAutoExclusive(False)
            half.setChecked(half.text() == text)
            half.setAutoExclusive(True)

    def text(self) -> str:
        """The choice, or nothing."""
        return next((half.text() for half in self.halves if half.isChecked()), "")

    def needs(self) -> int:
        """The width at which no word is shortened."""
        return max(half.sizeHint().width() for half in self.halves) * len(self.halves)

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Share the width evenly, edges on edges."""
        count, width = len(self.halves), self.width()
        edges = [round(width * i / count) for i in range(count + 1)]
        for half, left, right in zip(self.halves, edges, edges[1:], strict=False):
            half.setGeometry(left, 0, right - left + (1 if right < width else 0), self.height())

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """A digit chooses the box of that place."""
        place = event.key() - QtCore.Qt.Key.Key_1
        if 0 <= place < len(self.halves):
            # First the focus: what is chosen may bring another form in the place of this one.
            self.halves[place].setFocus()
            self.halves[place].click()
            return
        super().keyPressEvent(event)

    def event(self, event: QEvent) -> bool:
        """Focus on the whole goes to the chosen box."""
        if event.type() == QEvent.Type.FocusIn:
            next((half for half in self.halves if half.isChecked()), self.halves[0]).setFocus()
            return True
        return super().event(event)
