"""What can be pressed is pressed by Space and by Enter, and a key that is held presses once."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication

from jobsheet.gui.forms.pressable import Pressable


class _Bare(Pressable):
    def paintEvent(self, _event):  # noqa: N802
        """Nothing of a look of its own."""


@pytest.mark.parametrize("key", [Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter])
def test_each_of_these_keys_presses_once(qtbot, key):
    button, pressed = _Bare(), []
    qtbot.addWidget(button)
    button.clicked.connect(lambda: pressed.append(1))
    qtbot.keyClick(button, key)
    assert pressed == [1]


def test_a_key_that_is_held_does_not_press_again_and_another_goes_its_way(qtbot):
    button, pressed = _Bare(), []
    qtbot.addWidget(button)
    button.clicked.connect(lambda: pressed.append(1))
    again = QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_Return, Qt.KeyboardModifier.NoModifier, "\r", True)
    QApplication.sendEvent(button, again)
    qtbot.keyClick(button, Qt.Key.Key_A)
    assert pressed == []


def test_what_is_switched_off_is_not_pressed(qtbot):
    button, pressed = _Bare(), []
    qtbot.addWidget(button)
    button.clicked.connect(lambda: pressed.append(1))
    button.setEnabled(False)
    qtbot.keyClick(button, Qt.Key.Key_Return)
    assert pressed == []
