"""The written list of outside checks is the present one, and long enough."""

from __future__ import annotations

from .cutting.published import PARTS, ROWS
from .sources_page import MARKS, OUTSIDE, PAGE, SOURCES, agrees, count, page


def test_the_page_is_the_present_one():
    assert PAGE.read_text(encoding="utf-8") == page(), "write it anew: python -m tests.sources_page"


def test_every_check_stands_on_it_with_its_source():
    text = PAGE.read_text(encoding="utf-8")
    for row in ROWS:
        title = SOURCES[row.source]["title"]
        assert f"| {row.id} | {row.what} | {title} ({row.source}) | {row.mark} |" in text


def test_sixty_numbers_of_worked_examples_that_others_published_come_out():
    """Tables printed by others, and what our own notes work out, are counted apart and not among these."""
    examples = PARTS["Worked examples out of books and catalogues"]
    assert sum(agrees(row) for row in examples if row.mark in OUTSIDE) >= 60
    assert sum(agrees(row) for row in examples if row.mark == "read") >= 40


def test_a_number_that_does_not_agree_says_why():
    for row in ROWS:
        assert agrees(row) != bool(row.note and row.ours is not None), row.id


def test_each_way_of_knowing_is_counted():
    assert set(MARKS) == {row.mark for row in ROWS}
    assert sum(count(ROWS, mark)[0] for mark in MARKS) == len(ROWS)
