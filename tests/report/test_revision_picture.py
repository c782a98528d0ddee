"""What a revision changed is heavy in its picture, and nothing else is."""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import Line
from jobsheet.edit.commands import SetField
from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.report.pictured.revision_picture import changed_steps, revision_picture


def heavy(drawing):
    return [item for item in drawing.items if isinstance(item, Line) and item.weight == "cut"]


def test_a_first_plan_has_nothing_heavy(hm100):
    drawing = revision_picture(None, hm100)
    assert not heavy(drawing)
    assert revision_picture(hm100, hm100) == drawing


@pytest.mark.parametrize("key", ["drill", "face-rough"])
def test_what_a_changed_step_cut_is_heavy(hm100, key):
    fields = hm100.find(key)[1].fields
    after = SetField(key, "note", f"{fields.note}, slower").apply(hm100)
    assert changed_steps(hm100, after) == {key}


def test_a_hole_that_came_is_heavy_and_the_rest_is_not(hm100):
    keys = [one.key for _, one in hm100.operations()]
    drilled = frozenset(("drill",)) & set(keys)
    assert drilled
    before = DeleteSteps(tuple(drilled)).apply(hm100)
    assert changed_steps(before, hm100) == drilled
    drawing = revision_picture(before, hm100)
    assert heavy(drawing)
    outer = [item for item in drawing.items if isinstance(item, Line) and item.weight == "outline"]
    wide = max(x for item in outer for x, _ in item.points) - min(x for item in outer for x, _ in item.points)
    marked = max(x for item in heavy(drawing) for x, _ in item.points) - min(
        x for item in heavy(drawing) for x, _ in item.points
    )
    assert marked < wide  # the holes lie inside the plate
