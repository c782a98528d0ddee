"""One row of a list to take from: said whole, pressed only where it can be taken."""

from __future__ import annotations

import pytest
from PySide6.QtCore import Qt

from jobsheet.gui.choosing.list_row import ListRow
from jobsheet.gui.choosing.listed import Listed
from jobsheet.gui.ink import look

MILL = Listed(key="a", title="end mill 12 mm", under="drawer 1", fact="dry")


@pytest.fixture
def row(qtbot):
    look.apply("light")
    made = ListRow(None)
    qtbot.addWidget(made)
    made.resize(300, 44)
    made.pressed_times = []
    made.clicked.connect(lambda: made.pressed_times.append(1))
    return made


def test_it_is_said_and_a_long_one_stands_in_the_tooltip(row):
    row.put(MILL, chosen=False, split=0.5)
    assert row.accessibleName() == "end mill 12 mm, drawer 1, dry"
    assert row.toolTip() == ""
    row.put(
        Listed(key="b", title="a long title of a thing that is not short at all"), chosen=False, split=0.5
    )
    assert "not short at all" in row.toolTip()


def test_a_press_takes_it_and_does_not_choose_it(qtbot, row):
    row.put(MILL, chosen=False, split=0.0)
    qtbot.mouseClick(row, Qt.MouseButton.LeftButton)
    assert row.pressed_times == [1]
    assert not row.isChecked()


def test_what_is_away_cannot_be_taken(qtbot, row):
    row.put(Listed(key="a", title="end mill", away="not there now: lent"), chosen=False, split=0.0)
    qtbot.mouseClick(row, Qt.MouseButton.LeftButton)
    assert row.pressed_times == []
    assert "not there now: lent" in row.accessibleName()


def test_the_chosen_one_has_its_tint_and_its_bar(row):
    for chosen, token in ((True, "chosen"), (False, "paper")):
        row.put(MILL, chosen=chosen, split=0.0)
        image = row.grab().toImage()
        assert image.pixelColor(250, 4) == look.look().colour(token)
        assert (image.pixelColor(1, 10) == look.look().colour("bluemark")) is chosen


def test_before_it_shows_anything_it_is_empty(row):
    assert row.grab().toImage().width() == 300
    assert row.listed is None
