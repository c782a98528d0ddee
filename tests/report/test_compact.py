"""Ten steps a sheet, and a hole is not parted from its chain."""

from __future__ import annotations

from jobsheet.report.blocks import Picture, Steps, words_of
from tests.report.plans import bench, drill, job, pages

from .pages_read import FOUR, all_of, found


def titles(document) -> list[str]:
    return [f"{row[1].caption}: {row[1].text}" for page in document.pages for row in page.title[:1]]


def test_eleven_steps_go_on_a_second_sheet_with_holding_and_zero_repeated():
    document = pages(job([bench(10 * n) for n in range(1, 12)]))
    assert [title for title in titles(document) if title.startswith("Set-up")] == [
        "Set-up: 1 of 1 · Top up, sheet 1 of 2",
        "Set-up: 1 of 1 · Top up, sheet 2 of 2",
    ]
    first, second = (page for page in document.pages if page.kind == "set-up")
    # The second has hold and zero again without heads of their own: the words beside them say what they are.
    for page, heads in ((first, ["Hold", "Zero, from above", "After this set-up"]), (second, ["", ""])):
        assert [picture.title for block in page.blocks for picture in found(block, Picture)] == heads
    assert "Go on to sheet 2: do not unclamp." in "\n".join(words_of(first.blocks))
    assert "What happened" not in "\n".join(words_of(first.blocks))
    again = "\n".join(words_of(second.blocks))
    assert "step 80: same holding, same zero" in again
    assert "80 mm vice" in again
    assert "What happened" in again


def test_ten_steps_stand_on_one_sheet():
    document = pages(job([bench(10 * n) for n in range(1, 11)]))
    assert len([page for page in document.pages if page.kind == "set-up"]) == 1


def test_no_page_has_more_than_ten_steps_and_every_step_stands_on_one():
    document = pages(job([bench(10 * n) for n in range(1, 38)]))
    counts = [len(steps.rows) for steps in all_of(document, Steps)]
    assert max(counts) <= 10
    assert sum(counts) == 37


def test_a_hole_is_not_parted_from_its_chain_where_half_a_page_stays():
    steps = [bench(10 * n) for n in range(1, 10)] + [drill(100, FOUR[:1]), drill(110, FOUR[:1]), bench(120)]
    document = pages(job(steps))
    assert [row.number for row in all_of(document, Steps)[1].rows] == ["100", "110", "120"]
