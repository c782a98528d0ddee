"""A choice from a list: the wheel never changes it, and Delete takes out no row."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QKeyEvent, QWheelEvent
from PySide6.QtWidgets import QApplication

from jobsheet.gui.forms.pick_box import Pick
from jobsheet.gui.ink import look


@pytest.fixture
def pick(qtbot):
    look.apply("light")
    made = Pick(("mm", "in"), None)
    qtbot.addWidget(made)
    return made


def test_what_is_put_is_shown_and_what_is_not_in_it_shows_nothing(pick):
    pick.put("in")
    assert pick.text() == "in"
    pick.put("furlong")
    assert pick.text() == ""


def test_putting_tells_nobody_and_choosing_does(qtbot, pick):
    told = []
    pick.typed.connect(told.append)
    pick.put("in")
    assert told == []
    qtbot.keyClick(pick, Qt.Key.Key_Up)
    assert told == ["mm"]


def test_the_wheel_over_it_changes_nothing(pick):
    pick.put("mm")
    turned = QWheelEvent(
        QPointF(5, 5), QPointF(5, 5), QPoint(0, -120), QPoint(0, -120), Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(pick, turned)
    assert pick.text() == "mm"
    assert not turned.isAccepted(), "the sheet scrolls"


@pytest.mark.parametrize(("key", "kept"), [(Qt.Key.Key_Delete, True), (Qt.Key.Key_F5, False)])
def test_delete_stays_in_the_list(pick, key, kept):
    event = QKeyEvent(QEvent.Type.ShortcutOverride, key, Qt.KeyboardModifier.NoModifier)
    event.ignore()
    QApplication.sendEvent(pick, event)
    assert event.isAccepted() is kept
