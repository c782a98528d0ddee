"""The line that a list is typed into: arrows go through the list, everything else is typed."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QRect, Qt

from jobsheet.gui.choosing.find_line import FindLine
from jobsheet.gui.ink import look

CONTROL, NONE = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.NoModifier


@pytest.fixture
def line(qtbot):
    look.apply("light")
    made = FindLine(None)
    qtbot.addWidget(made)
    made.told = []
    made.moved.connect(lambda across, down: made.told.append((across, down)))
    made.taken.connect(lambda: made.told.append("taken"))
    made.left.connect(lambda back: made.told.append(("left", back)))
    return made


@pytest.mark.parametrize(
    ("key", "told"),
    [
        (Qt.Key.Key_Up, (0, -1)),
        (Qt.Key.Key_Down, (0, 1)),
        (Qt.Key.Key_PageUp, (0, -5)),
        (Qt.Key.Key_PageDown, (0, 5)),
        (Qt.Key.Key_Return, "taken"),
        (Qt.Key.Key_Enter, "taken"),
        (Qt.Key.Key_Escape, ("left", True)),
    ],
)
def test_these_keys_go_to_the_list(qtbot, line, key, told):
    line.setText("end mill")
    qtbot.keyClick(line, key)
    assert line.told == [told]
    assert line.text() == "end mill"


def test_left_and_right_go_through_the_text_unless_the_list_is_across(qtbot, line):
    line.setText("end")
    qtbot.keyClick(line, Qt.Key.Key_Left)
    assert (line.cursorPosition(), line.told) == (2, [])
    line.across = True
    qtbot.keyClick(line, Qt.Key.Key_Left)
    qtbot.keyClick(line, Qt.Key.Key_Right)
    assert (line.cursorPosition(), line.told) == (2, [(-1, 0), (1, 0)])
    qtbot.keyClick(line, Qt.Key.Key_Left, CONTROL)
    assert line.cursorPosition() == 0


def test_letters_are_typed(qtbot, line):
    qtbot.keyClicks(line, "20 end")
    assert (line.text(), line.told) == ("20 end", [])


def test_it_stands_inside_its_frame(line):
    frame = QRect(10, 20, 200, 32)
    line.stand(frame)
    assert frame.contains(line.geometry())
