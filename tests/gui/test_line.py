"""One line of the list: a row that is out of sight is not put together before it comes into it."""

from __future__ import annotations

import pytest

from jobsheet.gui.column.line import Line, LineWidget
from jobsheet.gui.column.views import HeadingView, RowAsked, RowView

HEADING = HeadingView(key="s", number=1, title="Set-up 1", holding="", zero="")


def _row(key="a", title="Face"):
    return RowView(key=key, number=10, icon="op-face", titles=(title,))


def test_a_line_knows_what_it_is():
    row, heading = Line(_row()), Line(HEADING)
    assert (row.is_row, row.is_heading, row.is_painted, row.key) == (True, False, True, "a")
    assert (heading.is_row, heading.is_heading, heading.is_painted, heading.key) == (False, True, True, "s")


def test_a_line_that_asks_is_a_widget_and_is_not_painted(qtbot):
    widget = LineWidget("notice", None)
    qtbot.addWidget(widget)
    line = Line(None, widget)
    assert (line.key, line.is_painted, line.view) == ("notice", False, None)
    with pytest.raises(NotImplementedError):
        widget.height_at_100()


def test_what_is_out_of_sight_is_put_together_when_it_is_looked_at_and_once():
    made = []

    def make():
        made.append(1)
        return _row(title="Drill")

    line = Line(_row())
    assert line.put(RowAsked("a", make), in_sight=False) is False
    assert made == []
    assert line.is_row
    assert line.view.title == line.view.title == "Drill"
    assert made == [1]


def test_in_sight_it_says_whether_it_has_to_be_painted_anew():
    line = Line(_row())
    assert line.put(_row(), in_sight=True) is False
    assert line.put(RowAsked("a", _row), in_sight=True) is False
    assert line.put(_row(title="Drill"), in_sight=True) is True
    line.top, line.high = 100, 31
    assert line.bottom == 131
