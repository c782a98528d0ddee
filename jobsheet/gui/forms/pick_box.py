"""A choice from a list: the wheel over it scrolls the column and changes nothing."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import (
    QPainter,
    QPaintEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QComboBox, QWidget

from jobsheet.gui.forms.box_events import belongs_to_field
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look


class Pick(QComboBox):
    """One of many, from a list; the wheel scrolls the sheet and never changes the choice."""

    typed = Signal(str)

    def __init__(self, choices: tuple[str, ...], parent: QWidget) -> None:
        super().__init__(parent)
        self.addItems(list(choices))
        self.setFrame(False)
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.textActivated.connect(self.typed)

    def put(self, text: str) -> None:
        """Show a choice; one that is not in the list shows nothing."""
        self.setCurrentIndex(self.findText(text))

    def text(self) -> str:
        """The choice."""
        return self.currentText()

    def event(self, event: QEvent) -> bool:
        """Delete in a list takes out no row."""
        if event.type() == QEvent.Type.ShortcutOverride and belongs_to_field(event):
            event.accept()
            return True
        return super().event(event)

    def wheelEvent(self, event: QWheelEvent) -> None:  # noqa: N802
        """Let the sheet have it."""
        event.ignore()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The words and a small mark that there are more."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            mark = now.px(16)
            ink.write(painter, now, self.rect().adjusted(0, 0, -mark, 0), self.currentText(), now.body)
            ink.write(painter, now, self.rect(), "▾", now.body, "pencil", ink.RIGHT)
