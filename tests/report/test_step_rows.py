"""A row of the sheet: what is set at the machine, its share and verdict, the points it goes to."""

from __future__ import annotations

import pytest

from jobsheet.report.blocks import Steps
from tests.report.plans import pages, plate

from .pages_read import all_of


@pytest.mark.parametrize(
    ("number", "spindle", "pace", "depth"),
    [
        ("20", "560", "1.3", "0.4"),
        ("30", "560", "1.7", "0.1"),
        ("50", "900", "8", "3.2"),
        ("60", "900", "15", "14"),
        ("40", "900", "", ""),
    ],
)
def test_a_step_of_the_plate_says_what_is_set_at_the_machine(number, spindle, pace, depth):
    rows = {row.number: row for steps in all_of(pages(plate()), Steps) for row in steps.rows}
    row = rows[number]
    assert (row.spindle, row.pace, row.depth) == (spindle, pace, depth)


def test_the_step_that_is_tapped_by_hand_has_its_spindle_stopped():
    rows = {row.number: row for steps in all_of(pages(plate()), Steps) for row in steps.rows}
    assert (rows["70"].spindle, rows["70"].pace, rows["70"].depth) == ("stopped", "by hand", "through")


def test_the_share_stands_with_its_verdict_and_with_what_governs():
    rows = {row.number: row for steps in all_of(pages(plate()), Steps) for row in steps.rows}
    # 1.81 N·m of 4.73 at 900 rpm: 38 % of the torque.
    assert (rows["50"].verdict, rows["50"].share, rows["50"].governs) == (
        "expected",
        "38 %",
        "spindle torque",
    )


def test_steps_name_the_points_they_go_to():
    rows = {row.number: row for steps in all_of(pages(plate()), Steps) for row in steps.rows}
    assert rows["60"].note.startswith("points 1–4;")
