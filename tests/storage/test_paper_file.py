"""Typed text read with its comments, and kept."""

from __future__ import annotations

import pytest

from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.typed_paper import with_entry_moved

from .cards_typed import CARDS


@pytest.mark.parametrize("path", CARDS, ids=lambda path: path.stem)
def test_a_shipped_card_comes_back_letter_for_letter(path):
    text = path.read_text(encoding="utf-8")
    assert paper_text(paper_from_text(text, path.name)) == text


def test_what_the_editor_does_not_know_and_comments_are_kept():
    text = 'format: 1\n# why\nodd: "#7"  # behind\n\nmore:\n  - {a: "1, 2"}  # here\n  - plain\n# end\n'
    assert paper_text(paper_from_text(text, "x")) == text


def test_an_entry_is_moved_with_its_comment():
    paper = paper_from_text("a:\n  # one\n  - 1\n  - 2\n", "x")
    assert paper_text(with_entry_moved(paper, ("a",), 0, 1)) == "a:\n  - 2\n  # one\n  - 1\n"


@pytest.mark.parametrize("sign", ["\x80", "\x9f", "\ufffe", "\uffff"])
@pytest.mark.parametrize("text", ['a: "{}"\n', "a: 1  # {}\n", "# {}\na: 1\n"])
def test_what_no_file_may_hold_is_read_as_the_sign_for_no_character(sign, text):
    """YAML 1.1, section 5.1, printable characters: as the strict readers have it, so that a paper can be opened."""
    assert paper_text(paper_from_text(text.format(sign), "x")) == text.format("\ufffd")
