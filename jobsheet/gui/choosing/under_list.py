"""The list under a field that is typed into: it follows the text, and what is blue in it is taken by Enter.

The keyboard stays in the field. Nothing is blue while the text can be read as it stands, until Down is
pressed: then Enter goes on to the next field as ever.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QEvent, QObject, QPoint, QRect, QRectF, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from jobsheet.gui.choosing.listed import Listed
from jobsheet.gui.choosing.row_list import RowList
from jobsheet.gui.forms.field import STAYING, Field
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

_KEYS = QtCore.Qt.Key
_STEPS: dict[int, int] = {_KEYS.Key_Down: 1, _KEYS.Key_Up: -1, _KEYS.Key_PageDown: 5, _KEYS.Key_PageUp: -5}
MOST, LEAST_WIDE, WIDEST = 6, 400, 640


class UnderList(QWidget):
    """It belongs to one field, over everything else of the window."""

    taken = Signal(str)
    closed = Signal()

    def __init__(self, field: Field, sheet: QWidget, name: str) -> None:
        super().__init__(field.window())
        self.field = field
        self._open = True
        self._sheet = sheet
        self.setAccessibleName(name)
        self.list = RowList(self, name)
        self.list.taken.connect(lambda one: self.taken.emit(one.key))
        field.box.installEventFilter(self)
        sheet.installEventFilter(self)
        field.window().installEventFilter(self)
        field.destroyed.connect(self._orphaned)
        self._describes = field.box.accessibleDescription()
        self.list.looked.connect(self._say)

    def put(self, things: tuple[Listed, ...], *, blue: bool) -> None:
        """List these; the first that can be taken is blue where Enter is to take it."""
        self.list.put(things, -1)
        if blue:
            self.list.step(1)
        self.hang()
        self.show()
        self.raise_()

    def _say(self, listed: Listed | None) -> None:
        """A screen reader hears with the field what Enter would take."""
        self.field.box.setAccessibleDescription(listed.spoken() if listed is not None else self._describes)

    def hang(self) -> None:
        """Under the frame of the field, or over it where there is no room below."""
        now, window = look(), self.parentWidget()
        if window is None or not isValid(self.field):
            return
        frame = self.field.frame()
        at = self.field.mapTo(window, QPoint(frame.left(), frame.bottom() + now.px(2)))
        wide = min(max(frame.width(), now.px(LEAST_WIDE), self._words_wide()), window.width() - now.px(16))
        high = self.list.needs(MOST) + 2
        top = at.y()
        if top + high > window.height() - now.px(8):
            top = max(0, at.y() - frame.height() - high - now.px(4))
        self.setGeometry(min(at.x(), window.width() - wide - now.px(8)), top, wide, high)
        self.list.setGeometry(1, 1, wide - 2, high - 2)

    def _words_wide(self) -> int:
        """The width at which the first rows need not be shortened, within reason."""
        now = look()
        wide = max(
            (
                now.width(listed.title, now.body) + now.width(listed.away or listed.beside, now.caption)
                for listed in self.list.things[: 2 * MOST]
            ),
            default=0,
        )
        return min(wide + now.px(60), now.px(WIDEST))

    def leave(self) -> None:
        """Go; the keyboard was never here."""
        if not self._open:
            return
        self._open = False
        if isValid(self.field):
            self.field.box.removeEventFilter(self)
            self.field.box.setAccessibleDescription(self._describes)
        for widget in (self._sheet, self.parentWidget()):
            if widget is not None and isValid(widget):
                widget.removeEventFilter(self)
        self.hide()
        self.closed.emit()
        self.deleteLater()

    def _orphaned(self) -> None:
        """The field is gone, as when another row is opened: what hung under it goes too."""
        if isValid(self):
            self.leave()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802  named by the toolkit
        """Keys of the field that are meant for the list; leaving the field leaves the list."""
        if not self._open or not isValid(self.field):
            return False
        if watched is not self.field.box:
            if event.type() in (QEvent.Type.Move, QEvent.Type.Resize):
                self.hang()
            return False
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            return self._key(event)
        lost = isinstance(event, QFocusEvent) and event.type() == QEvent.Type.FocusOut
        if lost and isinstance(event, QFocusEvent) and event.reason() not in STAYING:
            self.leave()
        return False

    def _key(self, event: QKeyEvent) -> bool:
        """Whether the list has used a key."""
        plain = event.modifiers() in (
            QtCore.Qt.KeyboardModifier.NoModifier,
            QtCore.Qt.KeyboardModifier.KeypadModifier,
        )
        if not plain:
            return False
        if event.key() in _STEPS:
            self.list.step(_STEPS[event.key()])
        elif event.key() == _KEYS.Key_Escape:
            self.leave()
        elif event.key() in (_KEYS.Key_Return, _KEYS.Key_Enter):
            if not self.list.take():
                self.leave()
                return False
        else:
            return False
        return True

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Paper and an ink line round it."""
        now = look()
        with QPainter(self) as painter:
            ink.fill(painter, self.rect(), now.colour("paper"))
            painter.setPen(QPen(now.colour("ink"), 1))
            painter.drawRect(QRectF(QRect(self.rect())).adjusted(0.5, 0.5, -0.5, -0.5))
