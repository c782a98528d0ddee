"""Words that lead to a page of the help: by the mouse and by Enter."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.page_link import PageLink
from jobsheet.gui.ink import look


class _Opens(QWidget):
    def __init__(self):
        super().__init__()
        self.asked = []

    def open_help(self, topic):
        self.asked.append(topic)


@pytest.fixture
def link(qtbot):
    look.apply("light")
    around = _Opens()
    qtbot.addWidget(around)
    return around, PageLink("What a rung is", "place:proving", around)


def test_it_says_where_it_leads(link):
    assert link[1].help_topic() == "place:proving"
    assert link[1].text() == "What a rung is"


@pytest.mark.parametrize("key", [Qt.Key.Key_Return, Qt.Key.Key_Enter])
def test_enter_opens_its_page_and_another_key_does_not(qtbot, link, key):
    around, made = link
    qtbot.keyClick(made, Qt.Key.Key_A)
    assert around.asked == []
    qtbot.keyClick(made, key)
    assert around.asked == ["place:proving"]


def test_a_press_of_the_mouse_opens_its_page(qtbot, link):
    around, made = link
    qtbot.mouseClick(made, Qt.MouseButton.LeftButton)
    assert around.asked == ["place:proving"]
    assert made.focusPolicy() == Qt.FocusPolicy.StrongFocus
