"""What the words of an old stock say of its surface and shape."""

from __future__ import annotations

import pytest

from jobsheet.storage.words.stock_words import beyond_surfaces, said_by, without_fact
from tests.stock.stock_lines import stock


def test_what_became_no_fact_is_named():
    assert said_by("bright flat, sharp edges, ends sawn; from the rack").left == (
        "sharp edges",
        "from the rack",
    )


def test_words_that_no_rule_reads_are_told_where_facts_came_from_words():
    found = stock("length: 80; width: 50; height: 12; condition: bright flat, from the rack, sharp edges")
    assert without_fact(found) == ("from the rack",)
    said = stock("length: 80; width: 50; height: 12; condition: from the rack; surfaces: bright")
    assert without_fact(said) == ()


@pytest.mark.parametrize(
    ("condition", "left"),
    [
        ("flat, ends filed", "flat"), ("flat, both ends are faced", "flat"), ("black hot-rolled flat", "black hot-rolled flat"),
        ("from the rack", "from the rack"), ("bright", ""), ("ends milled", ""),
    ],
)  # fmt: skip
def test_beside_surfaces_a_title_says_them_once(condition, left):
    assert beyond_surfaces(condition) == left
