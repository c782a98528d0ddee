"""The line that a list is typed into: it keeps the keyboard, and tells the list
where to go and what is taken.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QEvent, QRect, QRectF, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter, QPen
from PySide6.QtWidgets import QLineEdit, QWidget

from jobsheet.gui.forms.box_events import plain
from jobsheet.gui.forms.field import STAYING
from jobsheet.gui.ink.look import look

_KEYS = QtCore.Qt.Key
#: Where an arrow goes: across, down.
_ARROWS: dict[int, tuple[int, int]] = {
    _KEYS.Key_Up: (0, -1),
    _KEYS.Key_Down: (0, 1),
    _KEYS.Key_Left: (-1, 0),
    _KEYS.Key_Right: (1, 0),
}
#: Ways of the list that have no meaning in one line of text.
_FAR: dict[int, tuple[int, int]] = {_KEYS.Key_PageUp: (0, -5), _KEYS.Key_PageDown: (0, 5)}


class FindLine(QLineEdit):
    """One line of text over a list that follows it."""

    #: An arrow: how far across, how far down.
    moved = Signal(int, int)
    taken = Signal()
    #: Left by Esc (True: the keyboard goes back to where it was) or because something else has it.
    left = Signal(bool)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFrame(False)
        plain(self)
        #: Whether Left and Right go through the list, and not through the text.
        self.across = False

    def event(self, event: QEvent) -> bool:
        """No key that is typed here acts on the job behind it."""
        if event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent):
            alone = event.modifiers() & QtCore.Qt.KeyboardModifier.AltModifier
            if event.key() in _ARROWS and alone:
                event.accept()
                return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802  named by the toolkit
        """Enter takes, Esc leaves, arrows go through the list; everything else is typed."""
        key = event.key()
        sideways = key in (_KEYS.Key_Left, _KEYS.Key_Right)
        if key in (_KEYS.Key_Return, _KEYS.Key_Enter):
            self.taken.emit()
        elif key == _KEYS.Key_Escape:
            self.left.emit(True)
        elif key in _FAR:
            self.moved.emit(*_FAR[key])
        elif key in _ARROWS and (not sideways or (self.across and not event.modifiers())):
            self.moved.emit(*_ARROWS[key])
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """The frame shows it."""
        super().focusInEvent(event)
        self._repaint_frame()

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Lent to a menu or another window it comes back; else the list is left."""
        super().focusOutEvent(event)
        self._repaint_frame()
        if event.reason() not in STAYING:
            self.left.emit(False)

    def _repaint_frame(self) -> None:
        owner = self.parentWidget()
        if owner is not None:
            owner.update()

    def stand(self, frame: QRect) -> None:
        """Stand inside a frame."""
        now = look()
        self.setGeometry(frame.adjusted(now.px(8), now.px(5), -now.px(8), -now.px(5)))

    def paint_frame(self, painter: QPainter, frame: QRect) -> None:
        """The frame round it, as every field has it."""
        now = look()
        pen = QPen(now.colour("bluemark"), now.px(3)) if self.hasFocus() else QPen(now.colour("edge"), 1)
        half = pen.widthF() / 2
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(pen)
        painter.setBrush(now.colour("paper"))
        painter.drawRoundedRect(QRectF(frame).adjusted(half, half, -half, -half), now.px(2), now.px(2))
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
