"""Buttons as they are drawn."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import look


def test_a_button_can_be_reached(qapp, qtbot):
    look.apply("light")
    parent = QWidget()
    qtbot.addWidget(parent)
    button = Button("Print", parent, Manner.FILLED)
    assert button.focusPolicy() == Qt.FocusPolicy.StrongFocus
    assert button.cursor().shape() == Qt.CursorShape.PointingHandCursor
