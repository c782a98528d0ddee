"""One line of the finished part: as wide as the form, moved by Alt + Up and Alt + Down,
struck by Backspace once it is empty.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtGui import QKeyEvent

from jobsheet.gui.forms.field import Field

#: Those that are no line of several.
ALONE = ("datums", "sizes")
_MOVES = {QtCore.Qt.Key.Key_Up: -1, QtCore.Qt.Key.Key_Down: 1}
_ENTER = (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter)
_STRIKES = (QtCore.Qt.Key.Key_Backspace, QtCore.Qt.Key.Key_Delete)


class LineField(Field):
    """A field over the whole width whose neighbours are lines too."""

    #: Its name, and by how many lines it goes up or down; 0 strikes it.
    moved = Signal(str, int)

    #: How much of what stands under it is in view with it [px at 100 %]: what is
    #: understood, and a remark of two lines.
    room_below = 60

    def has_list(self) -> bool:
        """The forms that a line can have."""
        return True

    def span(self, columns: int, one: float) -> int:
        """The whole width: a line is read from one end to the other."""
        del one
        return columns

    def help_topic(self) -> str:
        """One page for the lines of features, one for the sizes, one for the letters of the datums."""
        name = self.entry.name if self.entry.name in ALONE else "feature"
        return f"field:job:finished/{name}"

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Take the keys that move or strike a line, before the row or the box does."""
        if isinstance(event, QKeyEvent) and (by := self._asked(event)) is not None:
            if event.type() == QEvent.Type.ShortcutOverride:
                event.accept()
                return True
            if event.type() == QEvent.Type.KeyPress:
                self.moved.emit(self.entry.name, by)
                return True
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            if event.key() in _ENTER:
                return self._go(1)
            if event.key() == QtCore.Qt.Key.Key_Backtab:
                return self._go(-1)
        return super().eventFilter(watched, event)

    def _go(self, by: int) -> bool:
        """Enter goes to the next line, Shift + Tab to the one before, past what is
        said of them; whether there is one.
        """
        form = self.parentWidget()
        lines = form.findChildren(LineField) if form is not None else [self]
        to = lines.index(self) + by
        if not 0 <= to < len(lines):
            return False
        reason = QtCore.Qt.FocusReason
        lines[to].box.setFocus(reason.TabFocusReason if by > 0 else reason.BacktabFocusReason)
        return True

    def _asked(self, event: QKeyEvent) -> int | None:
        """By how many lines it shall go; 0 to strike it, None for any other key."""
        if self.entry.name in ALONE:
            return None
        if event.modifiers() & QtCore.Qt.KeyboardModifier.AltModifier:
            return _MOVES.get(QtCore.Qt.Key(event.key()))
        empty = not self.box.text() and event.key() in _STRIKES
        return 0 if empty and event.modifiers() == QtCore.Qt.KeyboardModifier.NoModifier else None
