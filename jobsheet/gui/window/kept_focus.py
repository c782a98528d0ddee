"""Where the keyboard is, kept while all panels are made anew: the control of the
same sort and name has it afterwards.
"""

from __future__ import annotations

from typing import NamedTuple

from PySide6 import QtCore
from PySide6.QtWidgets import QLineEdit, QPlainTextEdit, QWidget


class Place(NamedTuple):
    """A control by its sort and its name, and in a line of text the cursor with what is chosen before it."""

    sort: str
    name: str
    anchor: int = 0
    cursor: int = 0


def place_of(box: QWidget | None) -> Place | None:
    """Where the keyboard is now; None where nothing of the panels has it."""
    if box is None or not box.accessibleName():
        return None
    sort, name = type(box).__name__, box.accessibleName()
    if isinstance(box, QLineEdit):
        at = box.cursorPosition()
        start, long = box.selectionStart(), len(box.selectedText())
        return Place(sort, name, at if start < 0 else start + long if at == start else start, at)
    if isinstance(box, QPlainTextEdit):
        return Place(sort, name, box.textCursor().anchor(), box.textCursor().position())
    return Place(sort, name)


def give_back(panels: QWidget, place: Place | None) -> None:
    """Give the keyboard to the same control among the new panels."""
    if place is None:
        return
    for box in panels.findChildren(QWidget):
        if type(box).__name__ == place.sort and box.accessibleName() == place.name and not box.isHidden():
            box.setFocus(QtCore.Qt.FocusReason.OtherFocusReason)
            _put_cursor(box, place)
            return


def _put_cursor(box: QWidget, place: Place) -> None:
    if isinstance(box, QLineEdit):
        box.setSelection(place.anchor, place.cursor - place.anchor)
        if place.anchor == place.cursor:
            box.setCursorPosition(place.cursor)
    elif isinstance(box, QPlainTextEdit):
        cursor = box.textCursor()
        cursor.setPosition(place.anchor)
        cursor.setPosition(place.cursor, cursor.MoveMode.KeepAnchor)
        box.setTextCursor(cursor)
