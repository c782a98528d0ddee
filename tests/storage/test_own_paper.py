"""A person's own files beside the shipped ones."""

from __future__ import annotations

import pytest

from jobsheet.errors import ChangedOutside, DocumentError
from jobsheet.paths import resources
from jobsheet.storage import own_paper
from jobsheet.storage.card_files import card_names, find_card
from jobsheet.storage.typed_paper import with_value

from .cards_typed import read


def test_saving_a_shipped_card_makes_the_own_copy_which_then_counts():
    shipped = resources() / "machines" / "bench-mill-b-1.yaml"
    before = shipped.read_bytes()
    paper, lying = own_paper.open_own("machines", "bench-mill-b-1")
    assert lying.shipped
    paper = with_value(paper, ("handles", 0, "a turn"), "2 mm")
    saved = own_paper.save_own(paper, lying, read)
    assert shipped.read_bytes() == before
    assert find_card("bench-mill-b-1").handles[0].travel == pytest.approx(2e-3)
    again, lying = own_paper.open_own("machines", "bench-mill-b-1")
    assert (again, lying) == (paper, saved)


def test_a_card_that_cannot_be_read_is_not_saved_over_a_good_one():
    paper, lying = own_paper.open_own("machines", "bench-mill-b-1")
    lying = own_paper.save_own(paper, lying, read)
    good = lying.path.read_bytes()
    bad = with_value(paper, ("spindle", "power"), "strong")
    with pytest.raises(DocumentError):
        own_paper.save_own(bad, lying, read)
    assert lying.path.read_bytes() == good
    own_paper.keep_draft(bad, lying)
    assert own_paper.draft_of(lying) == bad
    assert "bench-mill-b-1" in card_names()
    assert len(card_names()) == len(set(card_names())) == 3


def test_a_file_that_was_changed_outside_is_not_written_over():
    paper, lying = own_paper.open_own("machines", "bench-mill-b-1")
    lying = own_paper.save_own(paper, lying, read)
    lying.path.write_text(lying.path.read_text(encoding="utf-8") + "note: mine\n", encoding="utf-8")
    with pytest.raises(ChangedOutside):
        own_paper.save_own(with_value(paper, ("note",), "yours"), lying, read)


def test_a_new_name_becomes_a_file_name_of_words_that_is_not_taken():
    assert own_paper.new_place("machines", "Mill by the Door!", ()).path.name == "mill-by-the-door.yaml"
    taken = own_paper.new_place("machines", "Knee mill K-2", card_names())
    assert taken.path.name == "knee-mill-k-2-2.yaml"
