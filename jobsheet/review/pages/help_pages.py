"""Every page of the help in the window, by its id: remarks, limits, verdicts, formulas,
figures, kinds of step and fields.

An id is a sort, a colon and a name: `remark:spot-before-drilling`, `limit:quill-push`,
`field:drill/depth`. What stands on a page is read from the rules, formulas, entries and data themselves,
so that no page can fall behind them.
"""

from __future__ import annotations

from functools import cache

from jobsheet.review.pages.explained import plain
from jobsheet.review.pages.figure_pages import figure_pages, formula_pages
from jobsheet.review.pages.limit_pages import limit_pages, severity_pages, verdict_pages
from jobsheet.review.pages.line_pages import line_pages
from jobsheet.review.pages.one_page import Page
from jobsheet.review.pages.step_pages import field_pages, kind_pages
from jobsheet.review.pages.topic_pages import topic_pages


def page(id_: str) -> Page | None:
    """The page of that id; none where there is no such thing."""
    return pages().get(id_)


@cache
def pages() -> dict[str, Page]:
    """All of them, in the order in which a list shows them."""
    found = [
        *limit_pages(),
        *verdict_pages(),
        *severity_pages(),
        *kind_pages(),
        *field_pages(),
        *line_pages(),
        *figure_pages(),
        *formula_pages(),
        *topic_pages(),
    ]
    return {page.id: page for page in found}


def found(words: str) -> tuple[Page, ...]:
    """The pages that have all of these words, those with them in their title first."""
    asked = plain(words).split()
    if not asked:
        return tuple(pages().values())
    titled = [page for page in pages().values() if all(word in plain(page.title) for word in asked)]
    known = {page.id for page in titled}
    more = [
        page
        for page in pages().values()
        if page.id not in known and all(word in plain(page.text) for word in asked)
    ]
    return (*titled, *more)
