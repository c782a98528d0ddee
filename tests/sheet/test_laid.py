"""Blocks one under the other: as high as they are together, and each moved once however deep it lies."""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import Ellipse, Line, Text
from jobsheet.report.blocks import Gap, Heading, Rule
from jobsheet.sheet import plain_blocks  # noqa: F401  # registers how blocks are laid
from jobsheet.sheet.laid import Moved, across, lay, settled, stacked, text_lines


def test_blocks_are_as_high_together_as_each_and_what_is_between():
    one, other = lay(Gap(10), 100.0).height, lay(Gap(20), 100.0).height
    assert stacked((Gap(10), Gap(20)), 100.0, between=5.0).height == pytest.approx(one + other + 5)
    assert stacked((), 100.0).height == 0
    assert stacked((Heading("A"), Rule(), Gap(3)), 200.0).height > lay(Heading("A"), 200.0).height


def test_what_lies_deep_is_moved_by_all_that_it_lies_in():
    deep = Moved((Moved((Line(((0, 0), (1, 1))), Text(2, 2, "a"), Ellipse(3, 3, 1, 1)), 10, 20),), 100, 200)
    line, text, ellipse = settled((deep,))
    assert line.points == ((110, 220), (111, 221))
    assert (text.x, text.y, text.words) == (112, 222, "a")
    assert (ellipse.x, ellipse.y, ellipse.a) == (113, 223, 1)


def test_lines_of_text_go_down_and_end_below_the_last():
    items, bottom = text_lines(("a", "b"), "body", 5, 10)
    assert [item.words for item in items] == ["a", "b"]
    assert 10 < items[0].y < items[1].y <= bottom
    assert across(50, 7, left=3).points == ((3, 7), (50, 7))
