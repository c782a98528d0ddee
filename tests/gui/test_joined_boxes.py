"""Two to four choices side by side: digits choose, edges meet, and putting one tells nobody."""

from __future__ import annotations

from itertools import pairwise

import pytest
from PySide6.QtCore import Qt

from jobsheet.gui.forms.joined_boxes import Joined
from jobsheet.gui.ink import look


@pytest.fixture
def joined(qtbot):
    look.apply("light")
    made = Joined(("left", "middle", "right"), "Counts from", None)
    qtbot.addWidget(made)
    made.resize(200, 30)
    made.show()
    return made


def test_before_one_is_chosen_there_is_none(joined):
    assert joined.text() == ""
    assert joined.accessibleName() == "Counts from"
    assert [half.accessibleName() for half in joined.halves] == [
        "Counts from: left",
        "Counts from: middle",
        "Counts from: right",
    ]


def test_putting_tells_nobody_and_a_strange_one_shows_none(joined):
    told = []
    joined.typed.connect(told.append)
    joined.put("right")
    assert (joined.text(), told) == ("right", [])
    joined.put("above")
    assert joined.text() == ""


@pytest.mark.parametrize(
    ("key", "chosen"), [(Qt.Key.Key_1, "left"), (Qt.Key.Key_3, "right"), (Qt.Key.Key_4, "middle")]
)
def test_a_digit_chooses_the_box_of_that_place(qtbot, joined, key, chosen):
    told = []
    joined.put("middle")
    joined.typed.connect(told.append)
    qtbot.keyClick(joined, key)
    assert joined.text() == chosen
    assert told == ([chosen] if chosen != "middle" else [])


@pytest.mark.parametrize("width", [90, 100, 200, 301])
def test_edges_stand_on_edges_over_the_whole_width(joined, width):
    joined.resize(width, 30)
    boxes = [half.geometry() for half in joined.halves]
    assert boxes[0].left() == 0
    assert boxes[-1].right() == width - 1
    for one, other in pairwise(boxes):
        assert other.left() == one.right(), "one line between them"


def test_what_it_needs_is_room_for_the_longest_word_three_times(joined):
    widest = max(half.sizeHint().width() for half in joined.halves)
    assert joined.needs() == 3 * widest
    assert joined.halves[1].sizeHint().width() == widest
