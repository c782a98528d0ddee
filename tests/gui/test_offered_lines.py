"""The remarks of an open row with what is offered: at once where it opens, and
after a rest while it is typed into.
"""

from __future__ import annotations

import pytest
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column import offered_lines
from jobsheet.gui.column.offered_lines import OfferedLines
from jobsheet.gui.column.remarks import Offer
from jobsheet.gui.ink import look
from jobsheet.model.remark import Remark


def _remark(rule, message="m"):
    return Remark(rule=rule, severity="habit", message=message, why="w", operations=("a",))


@pytest.fixture
def lines(qtbot, monkeypatch):
    look.apply("light")
    monkeypatch.setattr(offered_lines, "REST", 0)
    home = QWidget()
    qtbot.addWidget(home)
    made = OfferedLines(home)
    made.home, made.tried, made.says = home, [], "Mend"

    def offering(remark):
        made.tried.append(remark.rule)
        return Offer(label=made.says)

    made.offering = offering
    return made


def test_where_a_row_opens_everything_is_offered_at_once(lines):
    made = lines.put((_remark("one"), _remark("two")), lines.offering)
    assert lines.tried == ["one", "two"]
    assert [line.button.text() for line in made] == ["Mend", "Mend"]


def test_later_what_was_offered_stands_until_it_is_tried_again(qtbot, lines):
    lines.put((_remark("one"),), lines.offering)
    changed = []
    lines.changed.connect(lambda: changed.append(1))
    lines.says = "Mend it"
    kept, new = lines.put((_remark("one", "another message"), _remark("two")), lines.offering)
    assert lines.tried == ["one"]
    assert kept.button.text() == "Mend"
    assert new.button is None
    qtbot.waitUntil(lambda: len(lines.tried) == 3)
    assert lines.tried == ["one", "one", "two"]
    assert [line.button.text() for line in lines.lines] == ["Mend it", "Mend it"]
    assert len(changed) == 2


def test_where_somebody_comes_near_it_is_tried_at_once_and_not_again(qtbot, lines):
    lines.put((), lines.offering)
    one, two = lines.put((_remark("one"), _remark("two")), lines.offering)
    two.previewed.emit(two)
    two.previewed.emit(two)
    assert lines.tried == ["two"]
    qtbot.waitUntil(lambda: one.button is not None)
    assert lines.tried == ["two", "one"]


def test_without_remarks_there_are_no_lines(lines):
    lines.put((_remark("one"),), lines.offering)
    assert lines.put((), lines.offering) == []
    assert lines.lines == []
