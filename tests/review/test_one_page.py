"""A page of the help as plain text: title, sort, and every line with its caption."""

from __future__ import annotations

from jobsheet.review.pages.one_page import Page


def test_all_of_it_is_text_to_be_found():
    page = Page(id="figure:x", sort="figure", title="Torque", lines=(("", "M = F r"), ("Source", "a book")))
    assert page.text.splitlines() == ["Torque", "figure", "M = F r", "Source: a book"]
