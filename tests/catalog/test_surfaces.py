"""Surfaces and faces as they are typed: one word for all, then exceptions; what
cannot be read is named with its remedy.
"""

from __future__ import annotations

import pytest

from jobsheet.catalog.trade.surfaces import read_faces, read_surfaces
from jobsheet.errors import QuantityError


def test_one_word_for_all_then_exceptions():
    said = read_surfaces("black, ends sawn")
    assert dict(said.items)[""] == "black"
    assert "sawn" in dict(said.items).values()


@pytest.mark.parametrize("other", ["milled", "machined", "ground"])
def test_other_words_for_the_same(other):
    assert dict(read_surfaces(other).items) == dict(read_surfaces("finished").items)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "No surface is written"),
        ("top", "says no surface"),
        ("black, bright", "Two words are for all faces"),
    ],
)
def test_what_says_no_surface(text, says):
    with pytest.raises(QuantityError, match=says):
        read_surfaces(text)


def test_faces_each_once():
    assert read_faces("top, bottom, top").items == ("top", "bottom")
    assert set(read_faces("all").items) == {"top", "bottom", "left", "right", "front", "rear"}
    with pytest.raises(QuantityError):
        read_faces("inside")
