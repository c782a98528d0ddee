"""A cut over a face in which something was opened before."""

from __future__ import annotations

from jobsheet.edit.several_steps import MoveSteps
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.interrupted import opened_before

from .views_read import sample, view_of


def test_nothing_is_open_before_the_first_face():
    plan = plan_of(view_of(sample(100)))
    for step in plan.steps:
        if step.roles.mills == "flat":
            assert opened_before(plan, step, own_holes=True) is None


def test_a_face_behind_the_drill_goes_over_holes():
    job = sample(100)
    job = MoveSteps(("face-finish",), "set-up-1", len(job.set_ups[0].operations) - 1).apply(job)
    plan = plan_of(view_of(job))
    face = next(step for step in plan.steps if step.key == "face-finish")
    assert opened_before(plan, face, own_holes=True).key == "drill"
    assert opened_before(plan, face, own_holes=False) is None
