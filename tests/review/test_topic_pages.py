"""Pages for what can be asked why: one for each, even where two share a name."""

from __future__ import annotations

from jobsheet.review.pages.explained import topics
from jobsheet.review.pages.topic_pages import topic_pages


def test_each_topic_has_a_page_of_its_own():
    pages = topic_pages()
    assert len(pages) == len(topics())
    assert len({page.id for page in pages}) == len(pages)


def test_a_line_that_goes_on_is_joined():
    for page in topic_pages():
        assert page.lines
        assert all(not caption or caption[0].isupper() for caption, _ in page.lines)


def test_a_remark_leads_to_how_bad_it_is():
    remarks = [page for page in topic_pages() if page.id.startswith("remark:")]
    assert remarks
    assert all(page.see[0].startswith("severity:") for page in remarks)
