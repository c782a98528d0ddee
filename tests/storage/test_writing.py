"""What is written of any text reads back."""

from __future__ import annotations

import pytest

from jobsheet.catalog.reading.strict_yaml import parse
from jobsheet.storage.writing import blockable, emit, scalar

from .signs_refused import REFUSED


@pytest.mark.parametrize("code", REFUSED, ids=lambda code: f"U+{code:04X}")
def test_whatever_stands_in_a_text_the_written_one_reads_back(code):
    if 0xD800 <= code <= 0xDFFF:
        return  # no file holds one: the writer says so, below
    text = f"a{chr(code)}b"
    assert parse(f"one: {scalar(text)}\n", "x").fields["one"].text == text


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("drill 5 mm", True), ("a:b", True), ("a: b", False), ("a:", False), ("a#b", True), ("a #b", False), (" a", False), ("a ", False),
        ("", False), ("- a", False), ("⌀ 30", True), ("a\tb", False), ('say "so"', False), ("yes, no", True), ("[a]", False),
    ],
)  # fmt: skip
def test_a_text_is_quoted_only_where_it_must_be(text, plain):
    """YAML 1.2: a colon and a number sign are signs of their own only beside a blank (7.3.3, plain style)."""
    assert (scalar(text) == text) == plain
    assert parse(f"one: {scalar(text)}\n", "x").fields["one"].text == text


@pytest.mark.parametrize(("text", "plain"), [("10 mm", True), ("1, 2", False), ("a:b", False), ("a}", False)])
def test_inside_brackets_more_must_be_quoted(text, plain):
    assert (scalar(text, inside_flow=True) == text) == plain


@pytest.mark.parametrize(
    ("text", "fits"),
    [("a\nb", True), ("a\n\nb", True), ("a\nb\n", False), ("\na", False), (" a\nb", False), ("a \nb", False), ("a\n b", True), ("a\x07\nb", False)],
)  # fmt: skip
def test_lines_stand_as_a_block_where_they_come_back_letter_for_letter(text, fits):
    assert blockable(text) == fits
    lines = "\n".join(emit({"one": text}))
    assert lines.startswith("one: |-\n") == fits
    assert parse(f"{lines}\n", "x").fields["one"].text == text


def test_lists_and_what_is_empty():
    value = {"a": [], "b": [("1", "2, 3")], "c": [{}, {"d": "x", "e": {"f": "y"}}], "g": ["h"]}
    assert emit(value) == [
        "a: []", "b:", '  - [1, "2, 3"]', "c:", "  - {}", "  - d: x", "    e:", "      f: y", "g:", "  - h",
    ]  # fmt: skip
