"""Roughing and finishing of a face: which pass is the last, and how much it takes."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.rough_and_finish import close, finishes, last_pass, length_text, only_wall

from .views_read import sample, steps_of, view_of


def last_of(job, key):
    plan = plan_of(view_of(job))
    return last_pass(plan, next(step for step in plan.steps if step.key == key))


def test_the_second_face_finishes_what_the_first_roughed():
    last = last_of(sample(100), "face-finish")
    assert last.rough.key == "face-rough"
    assert last.thick == pytest.approx(last.step.fields.depth.value)
    assert last_of(sample(100), "face-rough").rough is None
    assert last_of(sample(100), "drill") is None


def test_limits_are_close_by_their_whole_width():
    step = steps_of(SetField("face-finish", "measure", "11.5 ±0.05").apply(sample(100)))["face-finish"]
    assert close(step, 0.11e-3)
    assert not close(step, 0.1e-3)
    assert finishes(step, 0.11e-3)
    assert not close(steps_of(sample(100))["clamp"], 1.0)
    assert not only_wall(step)


def test_a_length_as_it_is_typed():
    assert length_text(0.3e-3, "mm") == "0.3 mm"
    assert length_text(0.3048e-3, "in") == "0.0120 in"
