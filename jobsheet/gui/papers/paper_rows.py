"""The entries of a list in an editor: each a row that opens in place; Enter opens,
Alt + Up and Down move, Del takes out.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QEvent, QRect, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.plain_words import hover
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look

translate = QCoreApplication.translate
HIGH = 32
#: Between what a row tells of its entry; where there is no room for all, the last go as a whole.
BETWEEN = "   ·   "


class EntryRow(QWidget):
    """One entry of a list, closed or the head of the open one."""

    toggled = Signal()
    moved = Signal(int)
    removed = Signal()

    def __init__(self, text: str, parent: QWidget, *, opened: bool, problem: str) -> None:
        super().__init__(parent)
        self.opened = opened
        self._text, self._problem = text, problem
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.setCursor(QtCore.Qt.CursorShape.PointingHandCursor)
        self.buttons: list[Button] = []
        if opened:
            for words, slot in (
                (translate("PaperRows", "Up"), lambda: self.moved.emit(-1)),
                (translate("PaperRows", "Down"), lambda: self.moved.emit(1)),
                (translate("PaperRows", "Remove"), self.removed.emit),
            ):
                button = Button(words, self, Manner.LINK)
                button.clicked.connect(slot)
                self.buttons.append(button)
        self.say(text, problem)

    def say(self, text: str, problem: str) -> None:
        """Show what the entry holds, and whether something in it cannot be used."""
        self._text, self._problem = text, problem
        self.setAccessibleName(f"{text}. {problem}" if problem else text)
        hover(self, problem)
        self.update()

    def resizeEvent(self, _event: object) -> None:  # noqa: N802
        """Buttons at the right."""
        right = self.width()
        for button in reversed(self.buttons):
            hint = button.sizeHint()
            right -= hint.width()
            button.setGeometry(right, (self.height() - hint.height()) // 2, hint.width(), hint.height())

    def event(self, event: QEvent) -> bool:
        """Del and Alt + Up are this row's own."""
        own = (QtCore.Qt.Key.Key_Delete, QtCore.Qt.Key.Key_Up, QtCore.Qt.Key.Key_Down)
        if (
            event.type() == QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and event.key() in own
        ):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Open, move, take out."""
        key, alt = event.key(), bool(event.modifiers() & QtCore.Qt.KeyboardModifier.AltModifier)
        if key in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter, QtCore.Qt.Key.Key_Space):
            self.toggled.emit()
        elif key == QtCore.Qt.Key.Key_Delete:
            self.removed.emit()
        elif alt and key in (QtCore.Qt.Key.Key_Up, QtCore.Qt.Key.Key_Down):
            self.moved.emit(-1 if key == QtCore.Qt.Key.Key_Up else 1)
        else:
            super().keyPressEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """A click opens or closes."""
        if self.rect().contains(event.position().toPoint()):
            self.toggled.emit()

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Draw the ring."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """The ring goes."""
        super().focusOutEvent(event)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Ground, sign of a problem, words, rule, ring."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("chosen" if self.hasFocus() else "paper"))
            left = now.px(10)
            if self.opened:
                painter.fillRect(QRect(0, 0, now.px(4), self.height()), now.colour("bluemark"))
            if self._problem:
                signs.draw(
                    painter,
                    "problem-caret",
                    now.tokens.vermmark,
                    left,
                    self.height() // 2 - now.px(6),
                    now.px(13),
                )
                left += now.px(18)
            right = self.buttons[0].x() if self.buttons else self.width() - now.px(20)
            place = QRect(left, 0, right - left - now.px(6), self.height())
            font = now.bold if self.opened else now.body
            told = self._text.split(BETWEEN)
            while len(told) > 1 and now.width(BETWEEN.join(told), font) > place.width():
                told.pop()
            ink.write(painter, now, place, BETWEEN.join(told), font)
            if not self.buttons:
                ink.write(
                    painter,
                    now,
                    self.rect().adjusted(0, 0, -now.px(6), 0),
                    "▾",
                    now.body,
                    "pencil",
                    ink.RIGHT,
                )
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), self.height() - 1)
            if self.hasFocus():
                painter.setPen(QPen(now.colour("bluemark"), now.px(2)))
                painter.drawRect(self.rect().adjusted(1, 1, -2, -2))
