"""The cover: cutters by their drawers, minutes, what is fetched, what is open."""

from __future__ import annotations

import re

from jobsheet.report.blocks import Table
from tests.report.plans import drill, job, pages, plate

from .pages_read import all_of, text


def test_the_cover_lists_cutters_in_the_order_of_the_drawers():
    table = next(table for table in all_of(pages(plate()), Table) if table.columns[0].caption == "got")
    assert [(row[1].text, row[2].text) for row in table.rows] == [
        ("2", "7"),
        ("3", ""),
        ("3", "1"),
        ("5", ""),
        ("6", "2"),
    ]


def test_the_cover_says_minutes_to_set_by_hand_and_in_the_cut():
    table = next(table for table in all_of(pages(plate()), Table) if table.columns[0].caption == "done")
    # 20 to set; 5 + 5 + 8 by hand, 5 tools at 2 min and one size at 1.5; 2 x 70 s, 2 x
    # 87 s, 4 x 8 s and 4 x 15 s are about 7.
    assert table.rows[0][-1].text == "20 + 30 + 7"


def test_things_of_the_steps_that_lie_on_the_bench_are_fetched_too():
    assert "file" in text(pages(plate()), "cover")


def test_a_job_without_set_ups_or_steps_still_has_a_cover():
    assert pages(job()).pages[0].kind == "cover"
    assert pages(job([])).pages[0].kind == "cover"


def test_hazards_and_verdicts_beyond_stand_on_the_cover():
    plan = job([drill(10, [(200, 12)], cutter="drill 25 mm, drawer 3")])
    cover = text(pages(plan), "cover")
    assert "Still open in this plan" in cover
    assert re.search(r"Step 10, hazard: .*outside", cover)
    assert re.search(r"Step 10, beyond: ", cover)


def test_a_good_plan_has_nothing_open():
    assert "Still open" not in text(pages(plate()))
