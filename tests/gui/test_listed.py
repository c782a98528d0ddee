"""One thing of a list: as it is said, and where what was typed stands in it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.gui.choosing.listed import Listed, hit_in, holds_all, words_of


def test_it_is_said_with_all_that_it_has_and_without_gaps():
    assert Listed(key="k", title="B1 drill mill").spoken() == "B1 drill mill"
    whole = Listed(key="k", title="end mill", under="12 mm", fact="dry", beside="planned", away="lent")
    assert whole.spoken() == "end mill, 12 mm, dry, planned, lent"


@pytest.mark.parametrize(
    ("text", "words", "hit"),
    [
        ("End mill 20 mm", ("mill",), (4, 8)),
        ("End mill 20 mm", ("END".casefold(),), (0, 3)),
        ("End mill 20 mm", ("drill", "20"), (9, 11)),
        ("End mill", ("drill",), (0, 0)),
        ("End mill", (), (0, 0)),
        ("End mill", ("",), (0, 0)),
    ],
)
def test_the_first_word_that_stands_there_is_underlined(text, words, hit):
    assert hit_in(text, words) == hit


@pytest.mark.parametrize(
    ("typed", "held"),
    [
        ("20 end", True),
        ("en mi", True),
        ("nd", False),
        ("20 drill", False),
        ("drawer", True),
        ("", True),
        ("1", True),
    ],
)
def test_every_word_begins_some_word(typed, held):
    assert holds_all("end mill 20 mm, drawer (1)", words_of(typed)) is held


@given(st.text(max_size=20), st.text(max_size=12))
def test_whatever_is_typed_is_looked_for_without_failing(text, typed):
    start, end = hit_in(text, words_of(typed))
    assert 0 <= start <= end
    assert holds_all(text, ())
    assert not any(" " in word or "," in word for word in words_of(typed))
