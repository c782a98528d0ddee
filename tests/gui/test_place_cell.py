"""One box of a row of places: the keys of the table are asked, anything else is typed."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QGuiApplication, QKeyEvent
from PySide6.QtWidgets import QApplication

from jobsheet.gui.forms.place_cell import PlaceCell
from jobsheet.gui.ink import look

NONE, ALT, CONTROL = (
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.AltModifier,
    Qt.KeyboardModifier.ControlModifier,
)


@pytest.fixture
def cell(qtbot):
    look.apply("light")
    made = PlaceCell(None)
    qtbot.addWidget(made)
    made.told = []
    made.asked.connect(made.told.append)
    return made


@pytest.mark.parametrize(
    ("key", "modifiers", "asked"),
    [
        (Qt.Key.Key_Return, NONE, "enter"),
        (Qt.Key.Key_Enter, Qt.KeyboardModifier.KeypadModifier, "enter"),
        (Qt.Key.Key_Insert, NONE, "insert"),
        (Qt.Key.Key_Up, NONE, "above"),
        (Qt.Key.Key_Down, NONE, "below"),
        (Qt.Key.Key_Up, ALT, "up"),
        (Qt.Key.Key_Down, ALT, "down"),
        (Qt.Key.Key_Delete, CONTROL, "out"),
    ],
)
def test_the_table_is_asked_by_key(qtbot, cell, key, modifiers, asked):
    cell.setText("10")
    qtbot.keyClick(cell, key, modifiers)
    assert cell.told == [asked]
    assert cell.text() == "10"


def test_delete_takes_a_letter_and_in_an_empty_box_the_row(qtbot, cell):
    cell.setText("10")
    cell.setCursorPosition(0)
    qtbot.keyClick(cell, Qt.Key.Key_Delete)
    assert (cell.text(), cell.told) == ("0", [])
    cell.clear()
    qtbot.keyClick(cell, Qt.Key.Key_Delete)
    assert cell.told == ["out"]


@pytest.mark.parametrize(("copied", "told"), [("10, 20\n30, 40", ["paste"]), ("17.5", [])])
def test_a_list_goes_to_the_table_and_one_number_into_the_box(qtbot, cell, copied, told):
    QGuiApplication.clipboard().setText(copied)
    qtbot.keyClick(cell, Qt.Key.Key_V, CONTROL)
    assert cell.told == told
    assert cell.text() == ("" if told else copied)


def test_what_the_table_asks_does_not_act_on_the_step(cell):
    for key, mine in ((Qt.Key.Key_Insert, True), (Qt.Key.Key_Delete, True), (Qt.Key.Key_F5, False)):
        event = QKeyEvent(QEvent.Type.ShortcutOverride, key, NONE)
        event.ignore()
        QApplication.sendEvent(cell, event)
        assert event.isAccepted() is mine


def test_a_screen_reader_is_told_what_it_is(cell):
    cell.say("X of place 3", "10 mm")
    assert (cell.accessibleName(), cell.accessibleDescription()) == ("X of place 3", "10 mm")
