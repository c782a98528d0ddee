"""Where the keyboard is, kept while panels are made anew: by sort and name,
with cursor and what is chosen.
"""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QCheckBox, QLineEdit, QPlainTextEdit, QVBoxLayout, QWidget

from jobsheet.gui.window.kept_focus import Place, give_back, place_of


def _panels(qtbot, *boxes):
    panels = QWidget()
    qtbot.addWidget(panels)
    layout = QVBoxLayout(panels)
    for box in boxes:
        layout.addWidget(box)
    panels.show()
    panels.activateWindow()
    return panels


def _named(box, name, text=""):
    box.setAccessibleName(name)
    if isinstance(box, QLineEdit):
        box.setText(text)
    elif text:
        box.setPlainText(text)
    return box


def test_what_has_no_name_is_no_place(qtbot):
    box = QLineEdit()
    qtbot.addWidget(box)
    assert place_of(None) is None
    assert place_of(box) is None


@pytest.mark.parametrize(("anchor", "cursor"), [(3, 3), (1, 4), (4, 1), (0, 5)])
def test_a_line_of_text_has_cursor_and_choice_again(qtbot, anchor, cursor):
    old = _named(QLineEdit(), "Depth", "2.5 mm")
    qtbot.addWidget(old)
    old.setSelection(anchor, cursor - anchor)
    if anchor == cursor:
        old.setCursorPosition(cursor)
    place = place_of(old)
    assert place == Place("QLineEdit", "Depth", anchor, cursor)
    new = _named(QLineEdit(), "Depth", "2.5 mm")
    other = _named(QLineEdit(), "Width", "2.5 mm")
    panels = _panels(qtbot, other, new)
    give_back(panels, place)
    assert panels.focusWidget() is new
    assert place_of(new) == place


def test_several_lines_of_text_have_it_too(qtbot):
    old = _named(QPlainTextEdit(), "Note", "rang\nat four")
    qtbot.addWidget(old)
    cursor = old.textCursor()
    cursor.setPosition(2)
    cursor.setPosition(7, cursor.MoveMode.KeepAnchor)
    old.setTextCursor(cursor)
    place = place_of(old)
    assert (place.anchor, place.cursor) == (2, 7)
    new = _named(QPlainTextEdit(), "Note", "rang\nat four")
    panels = _panels(qtbot, new)
    give_back(panels, place)
    assert place_of(new) == place


def test_the_same_name_of_another_sort_or_hidden_does_not_get_it(qtbot):
    place = Place("QLineEdit", "Depth", 0, 0)
    hidden = _named(QLineEdit(), "Depth")
    panels = _panels(qtbot, _named(QPlainTextEdit(), "Depth", "x"), hidden, QCheckBox())
    hidden.hide()
    other = panels.findChild(QCheckBox)
    other.setFocus()
    give_back(panels, place)
    give_back(panels, None)
    assert panels.focusWidget() is other
