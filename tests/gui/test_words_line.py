"""A line of words under the form: said with its caption, and as high as its words need."""

from __future__ import annotations

import pytest

from jobsheet.gui.column.words_line import REMINDER, WordsLine
from jobsheet.gui.ink import look


@pytest.fixture
def line(qtbot):
    look.apply("light")
    made = WordsLine("on the sheet", "deburr", None, quiet=True)
    qtbot.addWidget(made)
    return made


def test_it_is_said_with_its_caption(line):
    assert line.accessibleName() == "on the sheet: deburr"
    line.put("deburr both sides")
    assert (line.text, line.accessibleName()) == ("deburr both sides", "on the sheet: deburr both sides")


def test_a_short_one_is_one_line_and_a_long_one_grows_as_it_gets_narrower(line):
    assert line.arrange(900) == look.look().px(REMINDER)
    line.put("measure before you go on " * 12)
    assert line.arrange(400) > line.arrange(900) > look.look().px(REMINDER)
