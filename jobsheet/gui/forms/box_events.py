"""Which keys a box leaves to the window or to its field, and that it takes no rich text."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QEvent
from PySide6.QtGui import (
    QColor,
    QKeyEvent,
    QKeySequence,
    QPalette,
)
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink.look import look

#: Keys that a text box would take for itself, though the window's history owns them.
HISTORY = (QKeySequence.StandardKey.Undo, QKeySequence.StandardKey.Redo)


def belongs_to_window(event: QEvent) -> bool:
    """Whether a key on its way to a text box is undo or redo of the whole job."""
    return isinstance(event, QKeyEvent) and (
        any(event.matches(key) for key in HISTORY)
        or (
            event.key() == QtCore.Qt.Key.Key_Z
            and event.modifiers()
            == QtCore.Qt.KeyboardModifier.ControlModifier | QtCore.Qt.KeyboardModifier.ShiftModifier
        )
    )


def belongs_to_field(event: QEvent) -> bool:
    """Whether a key would act on the whole row though the hand is in a field that has no use for it."""
    return isinstance(event, QKeyEvent) and event.key() in (
        QtCore.Qt.Key.Key_Delete,
        QtCore.Qt.Key.Key_Insert,
    )


def plain(widget: QWidget) -> None:
    """Take the field's own paper as ground."""
    made = QPalette(widget.palette())
    made.setColor(QPalette.ColorRole.Base, look().colour("paper"))
    made.setColor(QPalette.ColorRole.Highlight, QColor(look().colour("bluemark")))
    made.setColor(QPalette.ColorRole.HighlightedText, QColor(look().colour("onblue")))
    widget.setPalette(made)
