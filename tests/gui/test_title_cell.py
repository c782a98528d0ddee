"""One cell of the title block: what it says, and how wide it asks to be."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt

from jobsheet.gui.forms.title_cell import HIGH, SIDE, WIDEST, Cell, CellText
from jobsheet.gui.ink import look


@pytest.fixture
def cell(qtbot):
    look.apply("light")
    made = Cell("machine", None)
    qtbot.addWidget(made)
    return made


def test_it_is_said_as_caption_and_value_or_as_counts():
    assert CellText("Machine", "B 1").spoken() == "Machine: B 1"
    assert (
        CellText("Remarks", "", (("hazard", "1 hazard"), ("habit", "2 habits"))).spoken()
        == "Remarks: 1 hazard, 2 habits"
    )


def test_what_is_put_is_said_to_a_screen_reader(cell):
    cell.put(CellText("Machine", "B 1"))
    assert cell.accessibleName() == "Machine: B 1"
    assert cell.toolTip() == ""


def test_all_of_a_long_value_stands_in_the_tooltip(cell):
    long = "a bench mill with a column that turns, of the back room"
    cell.put(CellText("Machine", long, more="its card was changed"))
    assert long in cell.toolTip()
    assert "its card was changed" in cell.toolTip()


def test_it_asks_for_its_words_and_never_for_a_whole_window(cell):
    now = look.look()
    cell.put(CellText("Machine", "B 1"))
    narrow = cell.sizeHint()
    assert narrow.height() == now.px(HIGH)
    assert narrow.width() == now.width("Machine ▾", now.caption) + 2 * now.px(SIDE)
    cell.put(CellText("Machine", "w" * 900))
    assert cell.sizeHint().width() == now.px(WIDEST) + 2 * now.px(SIDE)


def test_enter_presses_it(qtbot, cell):
    pressed = []
    cell.clicked.connect(lambda: pressed.append(1))
    qtbot.keyClick(cell, Qt.Key.Key_Return)
    assert pressed == [1]
