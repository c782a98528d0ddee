"""The steps on paper: every word of a row stands there, and a longer note takes more height."""

from __future__ import annotations

from jobsheet.drawing.drawn import Text
from jobsheet.report.blocks import Steps
from jobsheet.sheet import steps_block  # noqa: F401  # registers how steps are laid
from jobsheet.sheet.laid import lay, settled
from tests.report.pages_read import all_of
from tests.report.plans import bench, job, pages, plate


def rows(plan):
    return [row for steps in all_of(pages(plan), Steps) for row in steps.rows]


def words(block, room=505.0):
    return " ".join(item.words for item in settled(lay(block, room).items) if isinstance(item, Text))


def test_numbers_speeds_and_cutters_stand_in_their_row():
    for row in rows(plate()):
        said = words(Steps((row,), True))
        assert row.number in said
        if row.spindle:
            assert row.spindle.split()[0] in said


def test_a_longer_note_takes_more_height():
    short = lay(Steps(tuple(rows(job([bench(10, "Saw it")]))), True), 505.0)
    long = lay(Steps(tuple(rows(job([bench(10, "Saw it", "a long note that goes on " * 10)]))), True), 505.0)
    assert long.height > short.height
