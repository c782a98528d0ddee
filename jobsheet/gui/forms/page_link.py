"""Words that lead to a page of the help: pressed, or by Enter, they open it."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.help_asked import ask_help
from jobsheet.gui.forms.plain_widgets import Label
from jobsheet.gui.ink.look import look


class PageLink(Label):
    """Words with the page that they lead to."""

    def __init__(self, words: str, topic: str, parent: QWidget) -> None:
        super().__init__(words, parent)
        self._topic = topic
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.setCursor(QtCore.Qt.CursorShape.PointingHandCursor)

    def help_topic(self) -> str:
        """The page it leads to."""
        return self._topic

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """Pressed: its page."""
        event.accept()
        ask_help(self, self._topic)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Enter presses it."""
        if event.key() in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter):
            ask_help(self, self._topic)
            return
        super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:  # noqa: N802
        """A ring where the keyboard is."""
        super().paintEvent(event)
        if self.hasFocus():
            with QPainter(self) as painter:
                painter.setPen(look().colour("bluemark"))
                painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
