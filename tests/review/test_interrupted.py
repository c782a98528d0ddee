"""A cut over a face in which something was opened before."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.edit.several_steps import MoveSteps
from jobsheet.model.shape import Groove, Hole, Recess, Slab
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.interrupted import opened_before
from jobsheet.stages.course import Sized

from .views_read import sample, steps_of, view_of


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


class TestWhatIsOpen:
    """Two steps by hand: what the earlier one left, from which side, and whether own holes count."""

    @pytest.mark.parametrize(
        ("shape", "depth", "side", "own", "others"),
        [
            (Hole(0, 0, 0.005, None), None, "up", True, False), (Hole(0, 0, 0.005, 0.004), 0.004, "up", True, False),
            (Groove(0, 0, 0, 0, 0.005, 0.004), 0.004, "up", True, True), (Recess(0, 0, 0.01, 0.01, 0.001, 0.004), 0.004, "up", True, True),
            (Hole(0, 0, 0.005, None), None, "down", True, True), (Hole(0, 0, 0.005, 0.004), 0.004, "down", False, False),
            (Groove(0, 0, 0, 0, 0.005, None), None, "down", True, True), (Groove(0, 0, 0, 0, 0.005, 0.004), 0.004, "down", False, False),
            (Hole(0, 0, 0.005, None), None, "near", False, False), (Groove(0, 0, 0, 0, 0.005, None), None, "near", False, False),
            # A thread opens nothing that its drill did not, a spot of no straight part hardly anything; a face opens nothing.
            (Hole(0, 0, 0.006, None, None, True), None, "down", False, False), (Hole(0, 0, 0.005, 0.0), 0.0, "up", False, False),
            (Slab(0.001), None, "up", False, False),
        ],
    )  # fmt: skip
    def test_by_shape_and_side(self, shape, depth, side, own, others):
        first = steps_of(sample(100))["face-rough"]
        lie = SimpleNamespace(up=getattr(first.lie, side), size=first.lie.size)
        earlier = SimpleNamespace(lie=lie, cut=SimpleNamespace(shapes=(Sized(shape=shape, depth=depth),)))
        step = SimpleNamespace(lie=first.lie, index=1)
        plan = SimpleNamespace(steps=(earlier, step))
        assert (opened_before(plan, step, own_holes=True) is earlier) is own
        assert (opened_before(plan, step, own_holes=False) is earlier) is others
        assert opened_before(plan, SimpleNamespace(lie=first.lie, index=0), own_holes=True) is None
