"""What is dialled, and what else a step needs, stands in its row: asked of the neutral page."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.operations.registry import kind, roles
from jobsheet.report.blocks import Steps
from jobsheet.storage.job_file import read_job
from tests.report.pages_read import all_of
from tests.report.plans import pages, plate


def test_the_depth_dial_of_a_finishing_pass_goes_on_from_the_roughing():
    """0.4 off and then 0.1 off with the same cutter end at 0.5 of one zero, which
    is named: lines 8 and 10 of 0.05 mm.
    """
    rows = {row.number: row for steps in all_of(pages(plate()), Steps) for row in steps.rows}
    assert [(one.caption, one.readings) for one in rows["20"].dials] == [
        ("head from touch, 0.4 down", ("0 + 8",))
    ]
    assert [one.readings for one in rows["30"].dials] == [("0 + 10",)]
    assert rows["30"].dials[0].caption.startswith("head on from the touch before")


def test_every_layer_has_its_reading_on_the_sheet(samples):
    """3.8 mm in five layers of 0.76 on a head of 2 mm a turn and lines of 0.05,
    then 0.2 more: the readings only rise.
    """
    block = read_job(samples / "hm-101-setting-block.yaml")
    rows = {row.number: row for steps in all_of(pages(block), Steps) for row in steps.rows}
    assert rows["50"].dials[0].readings == ("0 + 15", "0 + 30", "1 + 6", "1 + 21", "1 + 36")
    assert rows["50"].dials[0].beside == ("−0.010", "−0.020", "+0.020", "+0.010", "0")
    assert rows["55"].dials[0].readings == ("2 + 0",)


def test_a_cut_along_the_outside_is_wound_to_from_a_touch_of_that_side(samples):
    """HM-103, step 40, which makes C and has no zero: 3 mm off in three cuts on lines of
    0.001 in: 39.4, 78.7 and 118.1 lines.
    """
    block = read_job(samples / "hm-103-pivot-block.yaml")
    rows = {row.number: row for steps in all_of(pages(block), Steps) for row in steps.rows}
    side, _ = rows["40"].dials
    assert (side.caption, side.readings) == (
        "X from touching the right side, each cut in 1, 2, 3",
        ("0 + 39", "0 + 79", "0 + 118"),
    )


def test_the_outside_cut_of_the_pivot_block_comes_after_its_zero(samples):
    """Look-2: step 55 finds C, then B, before the end is milled. To 80 with a cutter of 20, 1 mm a cut:
    centre at 92, 91, 90 mm, 5.08 mm a turn.
    """
    block = read_job(samples / "hm-103-pivot-block.yaml")
    numbers = {operation.number: operation for _, operation in block.operations()}
    assert (numbers[55].key, numbers[55].fields.edges) == ("find-b-c", "C, then B")
    rows = {row.number: row for steps in all_of(pages(block), Steps) for row in steps.rows}
    side, down = rows["60"].dials
    assert side.readings == ("18 + 22", "17 + 183", "17 + 143")
    assert down.readings == ("3 + 94", "7 + 87", "11 + 81", "15 + 75")  # look-2 has the same four


def test_a_cut_along_the_outside_is_wound_to_from_the_zero_where_there_is_one(samples):
    """HM-104: zero 2 mm inside the pins, sides of 120 x 80, a cutter of 10: its centre at
    -5, 125 and 85 mm, 5.08 mm a turn.
    """
    plate_of_104 = read_job(samples / "hm-104-cover-plate.yaml")
    rows = {row.number: row for steps in all_of(pages(plate_of_104), Steps) for row in steps.rows}
    assert [rows[one].dials[0].readings for one in ("80", "82", "84", "86")] == [
        ("−1 + 3",),
        ("−1 + 3",),
        ("16 + 146",),
        ("24 + 121",),
    ]


def test_a_note_of_ones_own_stays_as_typed_even_where_it_looks_like_a_reading(samples):
    block = read_job(samples / "hm-103-pivot-block.yaml")
    note = "stop block at X 3 + 12; two blocks = 10 + 2 mm"
    key = next(one.key for _, one in block.operations() if one.number == 60)
    rows = {
        row.number: row
        for steps in all_of(pages(SetField(key, "note", note).apply(block)), Steps)
        for row in steps.rows
    }
    assert rows["60"].dials
    assert note in rows["60"].note


def test_slot_ends_and_walls_have_their_readings_as_holes_have(samples):
    """Demo scenario, section 9: the slot of HM-102 from 25 to 75, its walls at 29.5 and 30.5 mm."""
    slide = read_job(samples / "hm-102-slide-plate.yaml")
    rows = {row.number: row for steps in all_of(pages(slide), Steps) for row in steps.rows}
    assert rows["90"].dials[0].readings == ("X 4 + 184", "X 14 + 153", "Y 5 + 181")
    assert rows["100"].dials[0].readings == ("X 14 + 153", "X 4 + 184", "Y 5 + 161")
    assert rows["105"].dials[0].readings == ("X 4 + 184", "X 14 + 153", "Y 6 + 1")
    assert " + ." not in " ".join(row.note for row in rows.values())


@pytest.mark.parametrize(
    "name", ["hm-100-drilled-plate-b1", "hm-102-slide-plate", "hm-103-pivot-block", "hm-104-cover-plate"]
)
def test_everything_a_step_needs_stands_in_its_row(samples, name):
    """What and to which size, cutter and place, speed with its position, pace, depth, readings:
    asked of each kind by what it does.
    """
    plan = read_job(samples / f"{name}.yaml")
    rows = {row.number: row for steps in all_of(pages(plan), Steps) for row in steps.rows}
    for _, operation in plan.operations():
        row, plays = rows[str(operation.number)], roles(operation)
        cutter = getattr(operation.fields, "cutter", None)
        assert row.do, operation.key
        if cutter is not None:
            assert cutter.place in row.cutter, operation.key
        if row.pace and row.spindle != "stopped":
            assert row.spindle, operation.key
            assert row.spindle_note, operation.key
            assert plan.fluid in row.cutter, operation.key
            assert row.depth, operation.key
            assert row.share, operation.key
        if plays.mills and "milling" in kind(operation.kind).groups and plays.mills != "edge":
            assert row.dials, operation.key
            assert "If it rings" in " ".join(note.text for one in rows.values() for note in one.notes), (
                operation.key
            )
        if getattr(operation.fields, "at", None) and plays.mills != "recess":
            assert "point" in row.note, operation.key
        if getattr(operation.fields, "measure", None) is not None:
            assert row.measures, operation.key


def test_the_words_of_a_step_leave_out_what_its_rows_say_and_nothing_else(samples):
    """HM-102, step 40: half the tip stands in its row; how it is wound on stays in words."""
    rows = {
        row.number: row
        for steps in all_of(pages(read_job(samples / "hm-102-slide-plate.yaml")), Steps)
        for row in steps.rows
    }
    assert "half the tip is" not in rows["40"].note
    assert "lift, wind it on, then zero" in rows["40"].note


def test_a_cut_that_was_never_tried_begins_at_a_line_of_its_own(samples):
    """HM-102, step 90: 1.8 mm is 70.9 lines of 0.001 in, then four layers of 3 mm: 118.1, 236.2,
    354.3 and 472.4 lines of a turn of 200.
    """
    plate_ = read_job(samples / "hm-102-slide-plate.yaml")
    rows = {row.number: row for steps in all_of(pages(plate_), Steps) for row in steps.rows}
    down = rows["90"].dials[-1]
    assert down.caption == "knee from touch, 1.8 mm first, then 4 layers of 3"
    assert down.readings == ("0 + 71", "1 + 18", "2 + 36", "3 + 54", "4 + 72")
    assert down.beside[0] == "+0.003"
    # What was cut before, or is expected, has no such line: 12 mm of the walls in one go.
    assert rows["100"].dials[-1].readings == ("4 + 72",)
