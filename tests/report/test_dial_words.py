"""Dials that count other than the job: what a line is off, and a place before the zero."""

from __future__ import annotations

from jobsheet.report.blocks import Table
from tests.report.plans import drill, job, pages

from .pages_read import all_of


def test_an_inch_dial_on_a_metric_job_says_how_far_the_line_is_off_in_millimetres():
    # Demo scenario, section 9: 30.5 mm on K-2 is 6 turns + .0008, line 1, +0.005 mm.
    document = pages(job([drill(10, [(30.5, 10)])], machine="knee-mill-k-2", stock=("104", "64", "12")))
    table = next(table for table in all_of(document, Table) if table.columns[0].caption == "point")
    assert (table.rows[1][2].text, table.rows[1][2].small) == ("6 + 1", ("+0.005 mm",))


def test_a_place_before_the_zero_counts_the_dial_the_same_way():
    # 5 mm below zero on 2.5 mm a turn is two whole turns; 6 mm is three turns below and 1.5 up again.
    document = pages(job([drill(10, [(-5, 10), (-6, 10)])]))
    table = next(table for table in all_of(document, Table) if table.columns[0].caption == "point")
    assert [row[2].text for row in table.rows[1:]] == ["−2 + 0", "−3 + 75"]
