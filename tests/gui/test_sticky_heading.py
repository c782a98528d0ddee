"""The heading that stays in view: said as in the list, and a click on it opens the set-up."""

from __future__ import annotations

import pytest
from msgspec.structs import replace
from PySide6.QtCore import QPoint, Qt

from jobsheet.gui.column.sticky_heading import StickyHeading
from jobsheet.gui.column.views import HeadingView
from jobsheet.gui.ink import look

VIEW = HeadingView(key="set-up-1", number=1, title="Set-up 1: top up", holding="vice", zero="zero left front")


@pytest.fixture
def sticky(qtbot):
    look.apply("light")
    made = StickyHeading(VIEW, None)
    qtbot.addWidget(made)
    made.resize(1000, 36)
    made.show()
    return made


def test_it_is_said_as_the_heading_and_follows_it(sticky):
    assert sticky.accessibleName() == VIEW.spoken()
    sticky.put(replace(VIEW, title="Set-up 2: bottom up"))
    assert sticky.accessibleName().startswith("Set-up 2: bottom up")


def test_a_click_opens_and_another_button_or_letting_go_outside_does_not(qtbot, sticky):
    opened = []
    sticky.opened.connect(opened.append)
    qtbot.mouseClick(sticky, Qt.MouseButton.RightButton, pos=QPoint(50, 10))
    qtbot.mousePress(sticky, Qt.MouseButton.LeftButton, pos=QPoint(50, 10))
    qtbot.mouseRelease(sticky, Qt.MouseButton.LeftButton, pos=QPoint(50, 400))
    assert opened == []
    qtbot.mouseClick(sticky, Qt.MouseButton.LeftButton, pos=QPoint(50, 10))
    assert opened == ["set-up-1"]
