"""A file as typed text: entries are moved with what is theirs."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.typed_paper import Group, Paper, Part, text_at


@given(st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1).filter(str.strip), st.booleans())
def test_any_text_comes_back(text, flow):
    inner = Group((Part(text, "a"), Part("x", "b")), flow=flow)
    paper = Paper(Group((Part(text, "first"), Part(inner, "inner"))))
    again = paper_from_text(paper_text(paper), "x")
    assert text_at(again, ("first",)) == text
    assert text_at(again, ("inner", "a")) == text
