"""Pages for limits and their verdicts: every limit and every word that the program says has one."""

from __future__ import annotations

from jobsheet.limits.register import READS
from jobsheet.model.figure import VERDICTS
from jobsheet.model.remark import SEVERITIES
from jobsheet.review.pages.limit_pages import limit_pages, severity_pages, verdict_pages


def test_every_verdict_and_severity_has_its_page():
    assert {page.title for page in verdict_pages()} >= set(VERDICTS)
    assert [page.title for page in severity_pages()] == list(SEVERITIES)


def test_a_limit_says_what_is_asked_against_what_and_by_whom():
    assert READS
    for page in limit_pages():
        assert [caption for caption, _ in page.lines] == [
            "What is asked",
            "Against what",
            "What makes it lighter",
            "Source",
        ]
        assert all(said for _, said in page.lines)
        assert set(page.see) == {one.id for one in verdict_pages()}
