"""Which page of the help belongs to a control: that of the nearest thing around it that has one."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from jobsheet.gui.desk.help_topic import page_near
from jobsheet.review.pages.one_page import Page

OWN = (
    Page(id="keys", sort="s", title="Keys", lines=()),
    Page(id="place:proving", sort="s", title="Proving", lines=()),
)


class _About(QWidget):
    def __init__(self, topic, parent=None):
        super().__init__(parent)
        self._topic = topic

    def help_topic(self):
        return self._topic


def test_the_nearest_topic_counts(qtbot):
    outer = _About("place:proving")
    qtbot.addWidget(outer)
    assert page_near(QWidget(outer), OWN).id == "place:proving"
    assert page_near(_About("keys", outer), OWN).id == "keys"


def test_one_that_is_no_page_is_passed_over(qtbot):
    outer = _About("place:proving")
    qtbot.addWidget(outer)
    assert page_near(_About("no such page", outer), OWN).id == "place:proving"


def test_anything_else_has_the_first_own_page_or_none(qtbot):
    alone = QWidget()
    qtbot.addWidget(alone)
    assert page_near(alone, OWN).id == "keys"
    assert page_near(None, OWN).id == "keys"
    assert page_near(alone) is None
