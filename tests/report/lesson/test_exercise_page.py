"""Every page of an exercise says that it is for no machine, and a group of blocks that has
no room left begins the next page.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.model.job import Part
from jobsheet.report.blocks import Words, words_of
from jobsheet.report.lesson.exercise_page import FOOT, PLANTED, Head, document, pages, title
from jobsheet.storage.job_file import read_job


@pytest.fixture
def head(samples):
    job = read_job(samples / "hm-103-pivot-block.yaml")
    return Head(job=job, exercise="HM-103, order of work", sheet=4, machine="Knee mill K-2")


def _cells(head):
    return {cell.caption: cell.text for row in title(head) for cell in row}


def test_a_worksheet_asks_for_a_number_and_no_name(head):
    cells = _cells(head)
    assert cells["Sheet"] == "Worksheet 4"
    assert "Your number, date" in cells
    assert cells["Part"].startswith("HM-103 ")
    assert not any("name" in caption.casefold() for caption in cells)


def test_only_the_key_has_the_seed(head):
    cells = _cells(replace(head, key="987, level 2"))
    assert cells["Sheet"] == "Key 4"
    assert cells["Slips and figures from class seed"] == "987, level 2"
    assert _cells(replace(head, called="Result"))["Sheet"] == "Result 4"


def test_a_part_without_a_name_is_called_so(head):
    assert _cells(replace(head, job=replace(head.job, part=Part())))["Part"] == "Part without a name"


@pytest.mark.parametrize(("room", "sheets"), [(1, [1, 1, 1, 1, 1]), (2, [2, 2, 1]), (9, [5])])
def test_groups_stay_whole_and_fill_page_after_page(head, room, sheets):
    groups = [(Words(f"group {number}", "body"), Words("goes on", "body")) for number in range(5)]
    made = pages(head, groups, lambda page: len(page.blocks) <= 2 * room)
    assert [len(page.blocks) // 2 for page in made] == sheets
    said = " ".join(words_of(tuple(page.blocks for page in made)))
    assert [said.index(f"group {number}") for number in range(5)] == sorted(
        said.index(f"group {number}") for number in range(5)
    )
    assert all(page.foot == (FOOT,) for page in made)


def test_a_group_that_has_no_room_anywhere_has_a_page_of_its_own(head):
    made = pages(head, [(Words("a", "body"),), (Words("b", "body"),)], lambda _: False)
    assert len(made) == 2


def test_mistakes_on_purpose_are_said_over_every_page(head):
    made = pages(replace(head, planted=True), [(Words("a", "body"),), (Words("b", "body"),)], lambda _: False)
    assert [page.band.head for page in made] == [PLANTED] * 2
    assert all(page.band is None for page in pages(head, [(Words("a", "body"),)], lambda _: True))


def test_a_document_of_an_exercise_carries_no_plan(head):
    made = document("worksheet 4", head, pages(head, [(Words("a", "body"),)], lambda _: True))
    assert made.source == b""
    assert made.title == "HM-103, order of work, worksheet 4"
    assert document("key 4", replace(head, key="987"), []).title.endswith("key 4")
