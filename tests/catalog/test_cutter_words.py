"""What else stands in the line of a cutter, and how finely a gauge of that name reads."""

from __future__ import annotations

import pytest

from jobsheet.catalog.tools.cutter_words import line_has, reading, tip_in, tip_of_line
from jobsheet.catalog.tools.cutters import read_cutter


@pytest.mark.parametrize(
    ("line", "words", "has"),
    [
        ("hand taps M6, taper and plug", ("hand tap",), True),
        ("taps M6, taper and plug", ("hand tap",), False),
        ("stub drill 5 mm", ("stub", "short"), True),
        ("drill 5 mm", ("stub", "short"), False),
    ],
)
def test_a_word_of_the_line(line, words, has):
    assert line_has(read_cutter(line), *words) == has


def test_the_tip_of_a_finder_stands_in_its_line():
    assert tip_of_line(read_cutter("edge finder, 10 mm tip, drawer 6 no. 2")) == "10 mm"
    assert tip_of_line(read_cutter("edge finder, drawer 6 no. 2")) == ""
    assert tip_in("edge finder, 0.200 in tip") == "0.200 in"


@pytest.mark.parametrize(
    ("gauge", "step"),
    [
        ("micrometer 25-50", 0.01e-3),
        ("dial gauge", 0.01e-3),
        ("caliper", 0.02e-3),
        ("depth gauge", 0.02e-3),
        ("steel rule", 0.5e-3),
        ("plug gauge", None),
        ("gap gauge", None),
        ("eye", None),
        ("", None),
    ],
)
def test_how_finely_it_reads(gauge, step):
    assert reading(gauge) == step
