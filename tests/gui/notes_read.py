"""The stop notes of a ladder read as two people would: initials typed, the button pressed."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest


def read_notes(place):
    """Give the initials that the notes of the ladder ask for, key by key; the first rung is open then."""
    notes = place.left.notes
    for field, initials in zip(notes.form.fields.values(), ("AA", "TR", "PC"), strict=False):
        field.box.setFocus()
        QTest.keyClicks(field.box, initials)
    QTest.keyClick(notes.read, Qt.Key.Key_Return)


def begin(place):
    """Plan the ladder of the form, and read its notes."""
    place.start()
    read_notes(place)
