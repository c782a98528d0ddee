"""A person's own files beside the shipped ones."""

from __future__ import annotations

import os

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


def test_drafts_of_files_that_were_never_saved_come_the_newest_first():
    paper, _ = own_paper.open_own("machines", "bench-mill-b-1")
    assert own_paper.drafts_of_new("machines", ()) == ()
    for age, name in ((30, "old"), (10, "new"), (20, "middle"), (0, "known")):
        lying = own_paper.new_place("machines", name, ())
        own_paper.keep_draft(paper, lying)
        os.utime(lying.draft, (1_000_000 - age, 1_000_000 - age))
    found = own_paper.drafts_of_new("machines", ("known",))
    assert [one.path.stem for one in found] == ["new", "middle", "old"]
    assert all(one.expected == own_paper.NONE_YET and not one.shipped for one in found)
    assert own_paper.draft_of(found[0]) == paper
    # Another file beside them is no draft.
    (found[0].draft.parent / "notes.txt").write_text("x", encoding="utf-8")
    assert len(own_paper.drafts_of_new("machines", ("known",))) == 3


def test_a_draft_that_is_gone_or_cannot_be_read_is_none():
    lying = own_paper.new_place("machines", "Mine", ())
    assert own_paper.draft_of(lying) is None
    lying.draft.parent.mkdir(parents=True)
    lying.draft.write_text("a: [", encoding="utf-8")
    assert own_paper.draft_of(lying) is None


def test_what_was_saved_leaves_no_draft():
    paper, lying = own_paper.open_own("machines", "bench-mill-b-1")
    own_paper.keep_draft(paper, lying)
    own_paper.save_own(paper, lying, read)
    assert own_paper.draft_of(lying) is None
    assert own_paper.drafts_of_new("machines", ()) == ()


@pytest.mark.parametrize(
    ("title", "name"),
    [
        ("", "machine"),
        ("!!", "machine"),
        ("Ärger & Söhne 2", "rger-s-hne-2"),
        ("x" * 60, "x" * 50),
        ("-a-", "a"),
    ],
)
def test_of_a_title_small_letters_and_digits_are_left(title, name):
    assert own_paper.new_place("machines", title, ()).path.stem == name


def test_of_a_name_that_is_taken_twice_it_is_the_third():
    assert own_paper.new_place("machines", "a", ("a", "a-2")).path.stem == "a-3"


def test_one_may_write_over_what_was_changed_outside():
    paper, lying = own_paper.open_own("machines", "bench-mill-b-1")
    lying = own_paper.save_own(paper, lying, read)
    lying.path.write_text(lying.path.read_text(encoding="utf-8") + "note: mine\n", encoding="utf-8")
    changed = with_value(paper, ("note",), "yours")
    own_paper.save_own(changed, lying, read, over=True)
    assert own_paper.open_own("machines", "bench-mill-b-1")[0] == changed
