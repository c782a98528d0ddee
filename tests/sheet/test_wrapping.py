"""Text into the room that it has."""

from __future__ import annotations

from jobsheet.sheet.fonts import width
from jobsheet.sheet.styles import STYLES
from jobsheet.sheet.wrapping import fitted, wrap


def test_nothing_is_wider_than_its_room():
    for words in ("W" * 60, "a fine day " * 20, "one-two-three-four/five", "x"):
        for line in wrap(words, "step", 90.0):
            assert width(line, STYLES["step"].size) <= 90.0
        assert "".join(wrap(words, "step", 90.0)).replace(" ", "") == words.replace(" ", "")


def test_a_name_shrinks_before_it_wraps():
    lines, size = fitted("HM-100 Drilled plate", "title", 120.0, 9.5)
    assert len(lines) == 1
    assert 9.5 <= size < STYLES["title"].size
