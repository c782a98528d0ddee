"""Faces that are cut again where the work should have been turned, and what a step takes off a face."""

from __future__ import annotations

import pytest

from jobsheet.review.plan.cut_again import cut_again, off
from jobsheet.review.plan.faces import plan_of

from .views_read import sample, steps_of, view_of


def test_what_a_face_takes_off_is_its_depth_on_the_face_that_it_makes():
    steps = steps_of(sample(100))
    step = steps["face-rough"]
    (face,) = step.makes
    assert off(step, face) == pytest.approx(step.fields.depth.value)
    assert off(step, "no such face") == 0
    assert off(steps["drill"], face) == 0


@pytest.mark.parametrize("number", [100, 101, 102, 103, 104])
def test_no_sample_cuts_a_face_again(number):
    view = view_of(sample(number))
    assert list(cut_again(plan_of(view), view.reckoned.shop.most_finish)) == []
