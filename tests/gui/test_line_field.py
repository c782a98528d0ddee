"""One line of the finished part: moved by Alt and an arrow, struck by Backspace once it is empty."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.line_field import LineField
from jobsheet.gui.ink import look
from jobsheet.operations.entry import Entry

ALT, NONE = Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.NoModifier


@pytest.fixture
def fields(qtbot):
    look.apply("light")
    form = QWidget()
    qtbot.addWidget(form)
    made = [
        LineField(Entry(name=name, title=name, asks="text"), "mm", form)
        for name in ("sizes", "line_1", "line_2")
    ]
    told = []
    for field in made:
        field.moved.connect(lambda name, by: told.append((name, by)))
    form.show()
    form.activateWindow()
    return form, made, told


@pytest.mark.parametrize(("key", "by"), [(Qt.Key.Key_Up, -1), (Qt.Key.Key_Down, 1)])
def test_alt_and_an_arrow_move_it(qtbot, fields, key, by):
    _, (sizes, one, _), told = fields
    qtbot.keyClick(one.box, key, ALT)
    assert told == [("line_1", by)]
    qtbot.keyClick(sizes.box, key, ALT)
    assert told == [("line_1", by)], "the sizes are no line of several"


@pytest.mark.parametrize("key", [Qt.Key.Key_Backspace, Qt.Key.Key_Delete])
def test_an_empty_one_is_struck_and_another_loses_a_letter(qtbot, fields, key):
    _, (_, one, two), told = fields
    one.box.setText("hole")
    one.box.setCursorPosition(2)
    qtbot.keyClick(one.box, key)
    assert (told, len(one.box.text())) == ([], 3)
    qtbot.keyClick(two.box, key)
    assert told == [("line_2", 0)]


def test_enter_goes_to_the_next_line(qtbot, fields):
    form, (sizes, one, two), _ = fields
    sizes.box.setFocus()
    qtbot.keyClick(sizes.box, Qt.Key.Key_Return)
    assert form.focusWidget() is one.box
    qtbot.keyClick(one.box, Qt.Key.Key_Return)
    assert form.focusWidget() is two.box


def test_it_takes_the_whole_width_and_has_one_page_of_the_help_for_all_lines(fields):
    _, (sizes, one, two), _ = fields
    assert one.span(4, 100.0) == 4
    assert one.help_topic() == two.help_topic() == "field:job:finished/feature"
    assert sizes.help_topic() == "field:job:finished/sizes"
