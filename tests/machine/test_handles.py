"""Distances as turns and lines, against the dials of the scenario."""

from __future__ import annotations

import pytest

from jobsheet.machine.handles import dial_text, reading, scale_text
from jobsheet.storage.card_files import find_card


@pytest.mark.parametrize(
    ("millimetres", "text", "turns", "line"),
    [
        (14, "5 + 1.50", 5, 75),
        (66, "26 + 1.00", 26, 50),
        (12, "4 + 2.00", 4, 100),
        (38, "15 + 0.50", 15, 25),
        (0, "0 + 0.00", 0, 0),
    ],
)
def test_dial_readings_of_hm_100(millimetres, text, turns, line):
    """Demo scenario section 3b, table of points: all on a line, error 0."""
    handle = find_card("bench-mill-b-1").handle("x")
    found = reading(handle, millimetres * 1e-3)
    assert dial_text(handle, found) == text
    assert (found.line_turns, found.line) == (turns, line)
    assert found.error == pytest.approx(0, abs=1e-9)


def test_a_line_on_the_next_turn_is_line_nought_or_one_of_that_turn():
    """Section 9: 30.5 mm on K-2 is 6 turns, line 1, +0.0054 mm; 75 mm is 14 turns + .1528."""
    handle = find_card("knee-mill-k-2").handle("y")
    found = reading(handle, 30.5e-3)
    assert (found.line_turns, found.line) == (6, 1)
    assert found.error * 1e3 == pytest.approx(0.0054, abs=5e-5)
    assert dial_text(handle, found) == "6 + .0008"
    assert dial_text(handle, reading(handle, 75e-3)) == "14 + .1528"
    assert scale_text(handle) == "0.200 in a turn, lines of 0.001 in"
