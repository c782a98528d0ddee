"""How holes are said: counts, depths, sizes, and three lengths of one step."""

from __future__ import annotations

import pytest

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.model.quantity import Depth, Quantity
from jobsheet.operations.shared.hole_words import bare, holes_words, shorter, size_words, where


def test_one_hole_is_a_word_and_more_are_counted():
    assert holes_words(1) == "one hole"
    assert holes_words(4) == "4 holes"


def test_depths_and_sizes_as_the_drawing_spells_them():
    assert where(Depth(None, "through")) == "through"
    assert where(Depth(0.02, "20 mm")) == "20 mm deep"
    assert bare(Quantity(0.02, "20 mm")) == "20"
    assert bare(Quantity(0.00635, "1/4 in")) == "1/4 in"
    assert size_words(read_cutter("reamer 16 H7", "mm")) == "16 H7"


@pytest.mark.parametrize(
    ("count", "size", "deep", "expected"),
    [
        (2, "6.8", "20 deep", ("Drill 2 holes 6.8, 20 deep", "Drill 2 × 6.8, 20 deep", "Drill 2 × 6.8")),
        (1, "6.8", "through", ("Drill one hole 6.8, through", "Drill 6.8, through", "Drill 6.8")),
        (3, "", "", ("Drill 3 holes",)),
    ],
)
def test_each_length_is_shorter_than_the_one_before(count, size, deep, expected):
    assert shorter("Drill", count, size, deep) == expected
    assert list(map(len, expected)) == sorted(map(len, expected), reverse=True)
