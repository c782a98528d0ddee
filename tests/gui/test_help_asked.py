"""A page of the help is opened by the first window around that can."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.help_asked import ask_help


class _Opens(QWidget):
    def __init__(self, parent=None):
        super().__init__(parent)
        self.asked = []

    def open_help(self, topic):
        self.asked.append(topic)


def test_the_nearest_one_that_can_is_asked_and_only_that(qtbot):
    outer = _Opens()
    qtbot.addWidget(outer)
    inner = _Opens(outer)
    ask_help(QWidget(QWidget(inner)), "field:depth")
    assert (inner.asked, outer.asked) == (["field:depth"], [])
    ask_help(QWidget(outer), "keys")
    assert outer.asked == ["keys"]


def test_where_none_can_nothing_happens(qtbot):
    alone = QWidget()
    qtbot.addWidget(alone)
    alone.open_help = "no function"
    ask_help(alone, "keys")
