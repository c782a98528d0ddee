"""Typed text becomes the file again, letter for letter."""

from __future__ import annotations

import pytest

from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.typed_paper import with_value

from .cards_typed import CARDS, read


def test_an_edit_leaves_everything_else_as_it_was():
    text = CARDS[0].read_text(encoding="utf-8")
    paper = paper_from_text(text, "card.yaml")
    after = with_value(paper, ("handles", 0, "backlash"), "0.21 mm")
    assert paper_text(after) == text.replace("backlash: 0.18 mm", "backlash: 0.21 mm")
    assert read(paper_text(after)).handles[0].backlash == pytest.approx(0.21e-3)
