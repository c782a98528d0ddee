"""The letters of the datums in one line, and the one sentence about what is none."""

from __future__ import annotations

import pytest

from jobsheet.errors import QuantityError
from jobsheet.finished.datums_line import datums_text, datums_told, read_datums
from jobsheet.finished.feature_line import read_feature


@pytest.mark.parametrize(
    "text",
    [
        "A: left, B: front",
        "A left, B front",
        "a: left; b: front",
        "datum A is the left face and datum B on the front face",
        "A = left end B = front",
    ],
)
def test_letters_are_read_as_people_write_them(text):
    assert read_datums(text) == (("A", "left"), ("B", "front"))


def test_base_and_back_are_faces_too():
    assert read_datums("A base, B back") == (("A", "bottom"), ("B", "rear"))


def test_what_is_written_is_read_again():
    for text in ("", "A: bottom", "A: bottom, B: front, C: left", "X: top"):
        assert datums_text(read_datums(text)) == text


@pytest.mark.parametrize(
    ("text", "sentence", "marked"),
    [
        ("A", "Say on which face A lies, such as A: bottom.", "A"),
        ("A: bottom, B", "Say on which face B lies, such as B: bottom.", "B"),
        (
            "A: under it",
            "“it” is no datum letter; write one letter, such as A: bottom.",
            "it",
        ),
        ("A: botom", "“botom” is no face: did you mean bottom?", "botom"),
        (
            "A: outside",
            "“outside” is no face: the faces are top, bottom, front, rear, left, right.",
            "outside",
        ),
        ("A: left, A: front", "A is the left already; take one out.", "A: front"),
        ("A: left, B: left", "The left is A already; a face has one letter.", "B: left"),
        ("bottom: A", "The letter comes first: write A: bottom.", "bottom: A"),
        ("1: left", "“1: left” is no datum; write letter and face, such as A: bottom, B: front.", "1: left"),
    ],
)
def test_what_is_no_datum_is_said_with_its_place(text, sentence, marked):
    with pytest.raises(QuantityError) as told:
        read_datums(text)
    assert str(told.value) == sentence
    assert text[told.value.start : told.value.end] == marked


def test_it_is_told_from_where_places_count():
    assert datums_told(read_datums("A: bottom, B: front, C: left")) == (
        "A bottom, B front, C left; places on the top count from C (left) and B (front) where their line says nothing"
    )
    assert datums_told(read_datums("A: right")) == (
        "A right; places on the top count from A (right) and front where their line says nothing"
    )
    assert "left and right both have a letter" in datums_told(read_datums("A: left, B: right"))
    # What is told is what a line without faces of its own then means.
    assert read_feature("5 through at 10, 12", "mm", read_datums("A: right")).counted == ("right", "front")
