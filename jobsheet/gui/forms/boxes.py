"""What stands inside a field's frame: a line of text, several lines, a choice from a list, joined boxes.

None of them draws a frame: the field does. Each says `typed` with the text when a person changed it, and
takes a text with `put` without saying so.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QEvent, QRectF, QSize, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QKeyEvent,
    QKeySequence,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
    QWheelEvent,
)
from PySide6.QtWidgets import QComboBox, QCompleter, QFrame, QLineEdit, QPlainTextEdit, QRadioButton, QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

#: Keys that a text box would take for itself, though the window's history owns them.
_HISTORY = (QKeySequence.StandardKey.Undo, QKeySequence.StandardKey.Redo)


def _belongs_to_window(event: QEvent) -> bool:
    """Whether a key on its way to a text box is undo or redo of the whole job."""
    return isinstance(event, QKeyEvent) and (
        any(event.matches(key) for key in _HISTORY)
        or (
            event.key() == QtCore.Qt.Key.Key_Z
            and event.modifiers()
            == QtCore.Qt.KeyboardModifier.ControlModifier | QtCore.Qt.KeyboardModifier.ShiftModifier
        )
    )


def _belongs_to_field(event: QEvent) -> bool:
    """Whether a key would act on the whole row though the hand is in a field that has no use for it."""
    return isinstance(event, QKeyEvent) and event.key() in (
        QtCore.Qt.Key.Key_Delete,
        QtCore.Qt.Key.Key_Insert,
    )


def _plain(widget: QWidget) -> None:
    """Take the field's own paper as ground."""
    made = QPalette(widget.palette())
    made.setColor(QPalette.ColorRole.Base, look().colour("paper"))
    made.setColor(QPalette.ColorRole.Highlight, QColor(look().colour("bluemark")))
    made.setColor(QPalette.ColorRole.HighlightedText, QColor(look().colour("onblue")))
    widget.setPalette(made)


class Line(QLineEdit):
    """One line of text."""

    typed = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFrame(False)
        _plain(self)
        self.textEdited.connect(self.typed)

    def offer(self, words: tuple[str, ...]) -> None:
        """Offer words that begin or hold what is typed."""
        completer = QCompleter(list(words), self)
        completer.setCaseSensitivity(QtCore.Qt.CaseSensitivity.CaseInsensitive)
        completer.setFilterMode(QtCore.Qt.MatchFlag.MatchContains)
        completer.activated.connect(self.typed)
        self.setCompleter(completer)

    def put(self, text: str) -> None:
        """Show a text; where it is there already, the cursor stays."""
        if self.text() != text:
            place = self.cursorPosition()
            self.setText(text)
            self.setCursorPosition(min(place, len(text)))

    def event(self, event: QEvent) -> bool:
        """Leave undo and redo to the window: they go through everything, typing too."""
        if event.type() == QEvent.Type.ShortcutOverride and _belongs_to_window(event):
            event.ignore()
            return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Enter goes on to the next field."""
        if event.key() in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter):
            self.focusNextChild()
            return
        if _belongs_to_window(event):
            event.ignore()
            return
        super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Whoever comes by the keyboard types over what stands there."""
        super().focusInEvent(event)
        if event.reason() in (QtCore.Qt.FocusReason.TabFocusReason, QtCore.Qt.FocusReason.BacktabFocusReason):
            self.selectAll()


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
        _plain(self)
        self.textChanged.connect(lambda: self.typed.emit(self.toPlainText()))

    def put(self, text: str) -> None:
        """Show a text without saying it was typed."""
        if self.toPlainText() != text:
            self.blockSignals(True)
            self.setPlainText(text)
            self.blockSignals(False)

    def event(self, event: QEvent) -> bool:
        """Leave undo and redo to the window."""
        if event.type() == QEvent.Type.ShortcutOverride and _belongs_to_window(event):
            event.ignore()
            return False
        return super().event(event)

    def text(self) -> str:
        """What stands there."""
        return self.toPlainText()


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
        if event.type() == QEvent.Type.ShortcutOverride and _belongs_to_field(event):
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


class Half(QRadioButton):
    """One of the joined boxes; the chosen one is paper on ink."""

    def event(self, event: QEvent) -> bool:
        """Delete on a choice takes out no row."""
        if event.type() == QEvent.Type.ShortcutOverride and _belongs_to_field(event):
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
        self.halves = [Half(choice, self) for choice in choices]
        for number, half in enumerate(self.halves, 1):
            half.setAccessibleName(f"{name}: {half.text()}")
            half.setToolTip(f"{number}")
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
            self.halves[place].click()
            self.halves[place].setFocus()
            return
        super().keyPressEvent(event)

    def event(self, event: QEvent) -> bool:
        """Focus on the whole goes to the chosen box."""
        if event.type() == QEvent.Type.FocusIn:
            next((half for half in self.halves if half.isChecked()), self.halves[0]).setFocus()
            return True
        return super().event(event)


Inside = Line | Lines | Pick | Joined
