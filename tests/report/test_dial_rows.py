"""Readings beside a step: one to each layer and wall, and none for a step by hand."""

from __future__ import annotations

from pathlib import Path

from jobsheet.edit.commands import SetField
from jobsheet.report.rows.dial_rows import dial_rows
from jobsheet.storage.job_file import read_job

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


def test_a_keyway_has_both_ends_on_its_row():
    job = read_job(Path(__file__).parents[1] / "operations" / "jobs" / "keyway.yaml")
    ends = rows("keyway", job)[0]
    assert ends.caption == "centre at the ends, X 15 and 34, Y 25"
    assert ends.readings == ("X 2 + 191", "X 6 + 139", "Y 4 + 184")
