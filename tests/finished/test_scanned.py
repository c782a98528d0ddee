"""A line read from left to right: sizes with limits, faces by name or letter, and where a unit is missing."""

from __future__ import annotations

import pytest

from jobsheet.errors import QuantityError
from jobsheet.finished.scanned import LONGEST, Scanned

from .lines_typed import DATUMS


def line(text, units="mm"):
    return Scanned(text, units, DATUMS)


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [("80 ±0.1", 79.9, 80.1), ("16 H7", 16.0, 16.018), ("10 +0.05/0", 10.0, 10.05), ("25 -0.1", 24.9, 25.0), ("⌀ 6.8", 6.8, 6.8), ("0.266 in", 6.7564, 6.7564), ("1/2 in", 12.7, 12.7)],
)  # fmt: skip
def test_sizes_with_their_limits(text, low, high):
    """16 H7: ISO 286-2."""
    size = line(text).take_size("hole")
    assert (size.low * 1e3, size.high * 1e3) == pytest.approx((low, high))


def test_a_face_by_its_word_another_word_or_its_letter():
    assert line("the base face").take_face() == ("bottom", "face")
    assert line("rear").take_face()[0] == "rear"
    assert line("datum A").take_face()[0] == "bottom"
    assert line("20, 15").take_face() is None


def test_blanks_commas_and_joining_words_are_passed_over():
    one = line(" , and  12")
    one.gap()
    assert one.text[one.at :] == "12"
    assert line(" ,; ").done()
    assert not line("12").done()


def test_where_a_bare_number_stood_is_kept():
    one = line("12 x 6 mm")
    one.take_size("hole")
    assert one.bare == [2]
    other = line("12 mm")
    other.take_size("hole")
    assert other.bare == []


def test_a_line_has_an_end():
    with pytest.raises(QuantityError, match=f"at most {LONGEST} characters"):
        line("1" * (LONGEST + 1))
