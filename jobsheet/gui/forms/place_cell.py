"""One box of a row of places: a line of text that tells which key of the table was pressed in it."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence

from jobsheet.gui.forms.box_events import belongs_to_window
from jobsheet.gui.forms.boxes import Line
from jobsheet.operations.pasted_places import is_list

_KEY = QtCore.Qt.Key
_NONE = QtCore.Qt.KeyboardModifier.NoModifier
_ALT = QtCore.Qt.KeyboardModifier.AltModifier
_CONTROL = QtCore.Qt.KeyboardModifier.ControlModifier
#: Keys that the table has for itself, whatever they do on the whole step: key and modifiers -> what is asked.
_ASKS: dict[tuple[int, QtCore.Qt.KeyboardModifier], str] = {
    (_KEY.Key_Return, _NONE): "enter", (_KEY.Key_Enter, _NONE): "enter", (_KEY.Key_Insert, _NONE): "insert",
    (_KEY.Key_Up, _NONE): "above", (_KEY.Key_Down, _NONE): "below", (_KEY.Key_Up, _ALT): "up", (_KEY.Key_Down, _ALT): "down",
    (_KEY.Key_Delete, _CONTROL): "out",
}  # fmt: skip


class PlaceCell(Line):
    """X or Y of one place, or a generator in words."""

    asked = Signal(str)

    def say(self, name: str, description: str) -> None:
        """What a screen reader says of it; told only where it is new."""
        if name != self.accessibleName():
            self.setAccessibleName(name)
        if description != self.accessibleDescription():
            self.setAccessibleDescription(description)

    def _asks(self, event: QEvent) -> str:
        """What a key asks of the table; nothing for one that is typed."""
        if not isinstance(event, QKeyEvent):
            return ""
        if event.matches(QKeySequence.StandardKey.Paste):
            return "paste" if is_list(QGuiApplication.clipboard().text()) else ""
        modifiers = event.modifiers() & ~QtCore.Qt.KeyboardModifier.KeypadModifier
        if event.key() == _KEY.Key_Delete and modifiers == _NONE and not self.text():
            return "out"
        return _ASKS.get((event.key(), modifiers), "")

    def event(self, event: QEvent) -> bool:
        """What the table asks by key does not act on the step."""
        mine = self._asks(event) or (isinstance(event, QKeyEvent) and event.key() == _KEY.Key_Delete)
        if event.type() == QEvent.Type.ShortcutOverride and mine and not belongs_to_window(event):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Tell what is asked; anything else is typed."""
        if asked := self._asks(event):
            self.asked.emit(asked)
            return
        super().keyPressEvent(event)

    def focusNextPrevChild(self, next: bool) -> bool:  # noqa: A002, N802  the toolkit's own name
        """Tab goes through the rows, also to those that are not shown just now."""
        if self.isHidden():  # the toolkit hands the keyboard on from a box that goes
            return super().focusNextPrevChild(next)
        self.asked.emit("tab" if next else "back")
        return True

    def go_on(self, *, forward: bool) -> None:
        """To the next or the last control, as Tab does anywhere else."""
        super().focusNextPrevChild(forward)
