"""Slots cut in one go: what the cutter's own size gives and holds."""

from __future__ import annotations

import pytest

from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.edit.commands import SetField
from jobsheet.edit.step_commands import AddOperation
from jobsheet.review.plan.full_width import given_by_the_cutter, held_by_the_cutter, own_width

from .views_read import sample, steps_of


def keyway():
    """A keyway of 6 by a slot drill."""
    job = AddOperation("set-up-1", "keyway", "find-zero").apply(sample(100))
    (key,) = {one.key for _, one in job.operations()} - {one.key for _, one in sample(100).operations()}
    return steps_of(SetField(key, "cutter", "slot drill 6 mm, 20 mm out").apply(job))[key]


@pytest.mark.parametrize(
    ("size", "holds"), [("6 H9", True), ("6 ±0.05", True), ("6 H7", False), ("6 ±0.005", False)]
)
def test_a_slot_drill_holds_grade_9_of_its_width(size, holds):
    """ISO 286: H9 of 6 mm is 0.030 wide, H7 0.012."""
    assert held_by_the_cutter(keyway(), read_size(size, "mm")) is holds


def test_a_groove_as_wide_as_its_cutter():
    assert own_width(keyway(), read_size("6 ±0.05", "mm"))
    assert not own_width(keyway(), read_size("8 ±0.05", "mm"))


def test_a_cutter_gives_limits_that_hold_what_cutters_cut_over():
    assert given_by_the_cutter(keyway(), read_size("6 +0.2/0", "mm"))
    assert not given_by_the_cutter(keyway(), read_size("6 ±0.05", "mm"))
    drill = steps_of(sample(100))["face-finish"]
    assert not given_by_the_cutter(drill, read_size("6 +0.2/0", "mm"))
