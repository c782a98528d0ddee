"""Which keys a box leaves to the window or to its field."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent, QPalette
from PySide6.QtWidgets import QLineEdit

from jobsheet.gui.forms.box_events import belongs_to_field, belongs_to_window, plain
from jobsheet.gui.ink import look

CONTROL, SHIFT, NONE = (
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.NoModifier,
)


def _key(key, modifiers=NONE):
    return QKeyEvent(QEvent.Type.KeyPress, key, modifiers)


@pytest.mark.parametrize(
    ("key", "modifiers", "window", "field"),
    [
        (Qt.Key.Key_Z, CONTROL, True, False),
        (Qt.Key.Key_Z, CONTROL | SHIFT, True, False),
        (Qt.Key.Key_Z, NONE, False, False),
        (Qt.Key.Key_C, CONTROL, False, False),
        (Qt.Key.Key_Delete, NONE, False, True),
        (Qt.Key.Key_Insert, NONE, False, True),
        (Qt.Key.Key_Backspace, NONE, False, False),
    ],
)
def test_each_key_has_one_owner(qapp, key, modifiers, window, field):
    event = _key(key, modifiers)
    assert belongs_to_window(event) is window
    assert belongs_to_field(event) is field


def test_what_is_no_key_is_nobodys(qapp):
    assert not belongs_to_window(QEvent(QEvent.Type.FocusIn))
    assert not belongs_to_field(QEvent(QEvent.Type.FocusIn))


def test_a_box_takes_the_paper_of_the_look(qtbot):
    look.apply("dark")
    box = QLineEdit()
    qtbot.addWidget(box)
    plain(box)
    assert box.palette().color(QPalette.ColorRole.Base) == look.look().colour("paper")
    assert box.palette().color(QPalette.ColorRole.Highlight) == look.look().colour("bluemark")
    look.apply("light")
