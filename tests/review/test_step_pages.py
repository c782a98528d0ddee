"""Pages for kinds of step and for every field that is filled in."""

from __future__ import annotations

from jobsheet.operations import registry
from jobsheet.operations.entry import Entry
from jobsheet.operations.registry import kind, kinds
from jobsheet.review.pages.step_pages import field_page, field_pages, kind_pages, recommended_fields


def test_every_kind_and_every_field_of_it_has_a_page():
    assert {page.title for page in kind_pages()} == {kind(name).title for name in kinds()}
    ids = [page.id for page in field_pages()]
    assert len(ids) == len(set(ids))
    assert len(ids) > sum(len(kind(name).entries) for name in kinds())


def test_bounds_and_hint_of_a_field_stand_on_its_page():
    page = field_page(
        "x",
        "X",
        Entry(name="depth", title="Depth", asks="length", low="0.1 mm", high="50 mm", hint="such as 4 mm"),
    )
    assert "at least 0.1 mm" in page.text
    assert "at most 50 mm" in page.text
    assert "For example: 4 mm." in page.text


def test_what_may_be_left_to_the_adviser_are_fields_of_the_kind():
    for name in kinds():
        assert set(recommended_fields(kind(name))) <= {entry.name for entry in kind(name).entries}


def test_a_field_s_page_says_its_bounds_whether_it_may_stay_empty_and_its_choices():
    """What the entry itself says, and no line of which it says nothing."""
    for low, high, said in (
        ("1 mm", "2 mm", "at least 1 mm, at most 2 mm"), ("1 mm", "", "at least 1 mm"), ("", "2 mm", "at most 2 mm"), ("", "", None),
    ):  # fmt: skip
        entry = Entry(name="wide", title="Wide", asks="length", low=low, high=high)
        lines = dict(field_page("nobody", "Nobody", entry).lines)
        assert lines.get("Taken") == (f"{said}; what lies beyond is refused, never moved." if said else None)
        assert lines["May stay empty"] == "no"
        assert "Left empty" not in lines
        assert "One of" not in lines
    optional = Entry(
        name="way",
        title="Way",
        asks="choice",
        choices=("climb", "conventional"),
        optional=True,
        hint="such as climb",
    )
    page = field_page("nobody", "Nobody", optional)
    lines = dict(page.lines)
    assert (lines["One of"], lines["May stay empty"], lines["For example"]) == (
        "climb, conventional",
        "yes",
        "climb.",
    )
    assert page.see == ()
    hinted = Entry(name="way", title="Way", asks="length", hint="measured cold")
    assert dict(field_page("nobody", "Nobody", hinted).lines)["Mind"] == "measured cold."
    drill = registry.kind("drill")
    (feed,) = (one for one in drill.entries if one.name == "feed")
    page = field_page("drill", "Drill", feed)
    assert page.see == ("kind:drill",)
    assert "Left empty" in dict(page.lines)
