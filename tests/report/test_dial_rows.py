"""Readings beside a step: one to each layer and wall, and none for a step by hand."""

from __future__ import annotations

from jobsheet.edit.commands import SetField
from jobsheet.report.rows.dial_rows import dial_rows

from .plans import plate
from .seen_from_above import plan_of


def rows(key, job=None):
    plan = plan_of(job or plate())
    course = plan.courses[0]
    return dial_rows(plan, course, plan.job.find(key)[1])


def test_a_face_has_its_depth_and_a_step_by_hand_nothing():
    assert rows("face-rough")
    assert all(row.caption for row in rows("face-rough"))
    assert rows("clamp") == ()


def test_more_layers_have_more_readings():
    one = sum(len(row.readings) for row in rows("face-rough"))
    more = sum(
        len(row.readings) for row in rows("face-rough", SetField("face-rough", "layer", "0.1").apply(plate()))
    )
    assert more > one
