"""A file as typed text: what is typed is kept, comments too; layout and reader of machine cards know the same fields."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.errors import ChangedOutside, DocumentError
from jobsheet.paths import resources
from jobsheet.storage import machine_file, own_paper
from jobsheet.storage.card_files import card_names, find_card
from jobsheet.storage.card_layout import LAYOUT
from jobsheet.storage.card_steps import STEPS, begin, classes
from jobsheet.storage.machine_file import machine_from_text
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_layout import asks, joined, parted
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.typed_paper import Group, Paper, Part, text_at, with_entry_moved, with_value

CARDS = sorted((resources() / "machines").glob("*.yaml")) + sorted(
    (resources() / "machine-classes").glob("*.yaml")
)


def read(text, name="card.yaml"):
    return machine_from_text(text, name, "card")


@pytest.mark.parametrize("path", CARDS, ids=lambda path: path.stem)
def test_a_shipped_card_comes_back_letter_for_letter(path):
    text = path.read_text(encoding="utf-8")
    assert paper_text(paper_from_text(text, path.name)) == text


def test_an_edit_leaves_everything_else_as_it_was():
    text = CARDS[0].read_text(encoding="utf-8")
    paper = paper_from_text(text, "card.yaml")
    after = with_value(paper, ("handles", 0, "backlash"), "0.21 mm")
    assert paper_text(after) == text.replace("backlash: 0.18 mm", "backlash: 0.21 mm")
    assert read(paper_text(after)).handles[0].backlash == pytest.approx(0.21e-3)


def test_what_the_editor_does_not_know_and_comments_are_kept():
    text = 'format: 1\n# why\nodd: "#7"  # behind\n\nmore:\n  - {a: "1, 2"}  # here\n  - plain\n# end\n'
    assert paper_text(paper_from_text(text, "x")) == text


def test_a_new_field_comes_to_stand_where_a_reader_expects_it():
    paper = paper_from_text("format: 1\ntitle: A\nstand: floor\nspindle:\n  drive: belts\n", "x")
    after = with_value(paper, ("kind",), "mill", LAYOUT.orders(("kind",)))
    path = ("spindle", "power")
    after = with_value(after, path, "1 kW, plate", LAYOUT.orders(path))
    assert paper_text(after) == (
        "format: 1\ntitle: A\nkind: mill\nstand: floor\nspindle:\n  drive: belts\n  power: 1 kW, plate\n"
    )


def test_an_entry_is_moved_with_its_comment():
    paper = paper_from_text("a:\n  # one\n  - 1\n  - 2\n", "x")
    assert paper_text(with_entry_moved(paper, ("a",), 0, 1)) == "a:\n  - 2\n  # one\n  - 1\n"


@given(st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1).filter(str.strip), st.booleans())
def test_any_text_comes_back(text, flow):
    inner = Group((Part(text, "a"), Part("x", "b")), flow=flow)
    paper = Paper(Group((Part(text, "first"), Part(inner, "inner"))))
    again = paper_from_text(paper_text(paper), "x")
    assert text_at(again, ("first",)) == text
    assert text_at(again, ("inner", "a")) == text


def test_layout_and_reader_know_the_same_fields(monkeypatch):
    """What the reader takes is asked of the reader itself, by a card that has everything."""
    taken = {}
    end, travel = machine_file._Card.end, {("travel", axis) for axis in ("x", "y", "head", "knee", "quill")}

    def watching(card, known):
        place = tuple(step.split("[")[0] for step in card.path.split(".") if step)
        taken.setdefault(place, set()).update(known)
        end(card, known)

    monkeypatch.setattr(machine_file._Card, "end", watching)
    read((resources() / "machines" / "bench-mill-b-1.yaml").read_text(encoding="utf-8"))
    fields = {(*place, name) for place, known in taken.items() for name in known} | travel
    groups = {place for place in taken if place} | {("travel",)}
    listed = [path for path, _ in asks(LAYOUT.parts)]
    assert len(listed) == len(set(listed))
    assert set(listed) == {one for one in fields if one not in groups}


def test_a_number_and_where_it_comes_from():
    assert parted("0.81, guessed") == ("0.81", "guessed")
    assert parted("0,81") == ("0,81", "")
    assert joined("0.81", "") == "0.81, guessed"
    assert joined(" ", "plate") == ""


@pytest.mark.parametrize("name", classes())
def test_the_card_of_a_class_can_be_used_at_once_and_says_what_it_assumes(name):
    paper = begin(name)
    machine = read(paper_text(paper))
    assert {word.strip() for word in machine.assumed.split(";")} == {step.word for step in STEPS if step.word}
    assert machine.spindle.power.mark == "guessed"


@pytest.mark.parametrize("step", STEPS, ids=lambda step: step.title)
def test_every_field_of_the_steps_is_a_field_of_the_card(step):
    known = {path for path, _ in asks(LAYOUT.parts)}
    assert set(step.fields) <= known


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
