"""What stands inside a field's frame: a line of text, several lines, a choice from a list, joined boxes.

None of them draws a frame: the field does. Each says `typed` with the text when a person changed it, and
takes a text with `put` without saying so.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QKeyEvent,
    QPalette,
)
from PySide6.QtWidgets import QFrame, QLineEdit, QPlainTextEdit, QWidget

from jobsheet.gui.forms.box_events import belongs_to_window, plain
from jobsheet.gui.forms.joined_boxes import Joined
from jobsheet.gui.forms.pick_box import Pick
from jobsheet.gui.ink.look import look


class Line(QLineEdit):
    """One line of text."""

    typed = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFrame(False)
        plain(self)
        self.textEdited.connect(self.typed)

    def put(self, text: str) -> None:
        """Show a text; where it is there already, the cursor stays."""
        if self.text() != text:
            place = self.cursorPosition()
            self.setText(text)
            self.setCursorPosition(min(place, len(text)))

    def propose(self, text: str) -> None:
        """What stands for it while it is empty, in pencil."""
        ink = self.palette()
        ink.setColor(QPalette.ColorRole.PlaceholderText, look().colour("pencil"))
        self.setPalette(ink)
        self.setPlaceholderText(text)

    def event(self, event: QEvent) -> bool:
        """Leave undo and redo to the window: they go through everything, typing too."""
        if event.type() == QEvent.Type.ShortcutOverride and belongs_to_window(event):
            event.ignore()
            return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Enter goes on to the next field."""
        if event.key() in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter):
            self.focusNextChild()
            return
        if belongs_to_window(event):
            event.ignore()
            return
        super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Whoever comes by the keyboard types over what stands there."""
        super().focusInEvent(event)
        if event.reason() in (QtCore.Qt.FocusReason.TabFocusReason, QtCore.Qt.FocusReason.BacktabFocusReason):
            # From its end to its beginning: a long text is then seen from where it begins.
            self.setSelection(len(self.text()), -len(self.text()))


class Lines(QPlainTextEdit):
    """Several lines of text; Tab goes on."""

    typed = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setTabChangesFocus(True)
        self.setUndoRedoEnabled(False)
        self.document().setDocumentMargin(0)
        self.setHorizontalScrollBarPolicy(QtCore.Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        plain(self)
        self.textChanged.connect(lambda: self.typed.emit(self.toPlainText()))

    def put(self, text: str) -> None:
        """Show a text without saying it was typed."""
        if self.toPlainText() != text:
            self.blockSignals(True)
            self.setPlainText(text)
            self.blockSignals(False)

    def event(self, event: QEvent) -> bool:
        """Leave undo and redo to the window."""
        if event.type() == QEvent.Type.ShortcutOverride and belongs_to_window(event):
            event.ignore()
            return False
        return super().event(event)

    def text(self) -> str:
        """What stands there."""
        return self.toPlainText()


Inside = Line | Lines | Pick | Joined
