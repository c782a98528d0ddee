"""Pages for kinds of step and for every field that is filled in."""

from __future__ import annotations

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
