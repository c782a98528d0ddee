"""The heads of the columns: painted at every width, with a line of ink under them."""

from __future__ import annotations

import pytest

from jobsheet.gui.column.heads_line import HeadsLine
from jobsheet.gui.column.measures import columns
from jobsheet.gui.ink import look


@pytest.mark.parametrize("width", [600, 1000, 1500])
def test_words_stand_in_it_and_a_line_under_them(qtbot, width):
    look.apply("light")
    made = HeadsLine()
    qtbot.addWidget(made)
    made.resize(width, 26)
    image = made.grab().toImage()
    at = columns(look.look(), width)
    under = [image.pixelColor(x, 24) for x in (5, width // 2, width - 5)]
    assert {one.name() for one in under} == {look.look().colour("ink").name()}
    dark = [x for x in range(width) if any(image.pixelColor(x, y).lightness() < 160 for y in range(4, 22))]
    assert any(x < at.number_right for x in dark), "step"
    assert any(at.text <= x < at.text + 30 for x in dark), "do"
    assert any(x > at.mark for x in dark), "share"
    if at.form == "narrow":
        assert not any(at.text + 60 < x < at.mark - 4 for x in dark)
