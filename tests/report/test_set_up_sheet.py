"""Sheets of set-ups: every step stands on one of them, in its order."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.report.blocks import Steps
from jobsheet.report.set_up_sheet import STEPS, rows_of, set_up_pages, set_up_parts

from .pages_read import all_of
from .plans import bench, job, plate
from .seen_from_above import plan_of


@pytest.mark.parametrize("count", [1, 4, STEPS, STEPS + 1, 3 * STEPS])
def test_every_step_stands_on_one_page_and_no_page_has_too_many(count):
    plan = plan_of(job([bench(10 * number, f"Do {number}") for number in range(1, count + 1)]))
    pages = set_up_pages(plan, set_up_parts(plan))
    numbers = [
        [row.number for steps in all_of(SimpleNamespace(pages=(page,)), Steps) for row in steps.rows]
        for page in pages
    ]
    assert [number for page in numbers for number in page] == [
        str(10 * number) for number in range(1, count + 1)
    ]
    assert max(map(len, numbers)) <= STEPS


def test_each_operation_has_its_rows():
    plan = plan_of(plate())
    rows = rows_of(plan, plan.courses[0])
    assert len(rows) == len(plan.job.set_ups[0].operations)
    assert all(rows)
