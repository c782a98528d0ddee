"""A finishing pass split off a cut: both together take what the one took."""

from __future__ import annotations

import pytest

from jobsheet.review.mending.split_cut import split_off, where_it_belongs
from jobsheet.review.plan.rough_and_finish import LEFT

from .views_read import sample, steps_of


def test_rough_and_finish_take_together_what_the_one_took():
    job = sample(100)
    step = steps_of(job)["face-rough"]
    mended = split_off(step, "mm")(job)
    (new,) = {one.key for _, one in mended.operations()} - {one.key for _, one in job.operations()}
    first, last = mended.find("face-rough")[1].fields, mended.find(new)[1].fields
    assert first.depth.value + last.depth.value == pytest.approx(step.fields.depth.value)
    assert last.depth.value == pytest.approx(LEFT)
    assert last.cutter == step.fields.cutter


def test_what_takes_no_more_than_a_finish_and_what_is_no_face_is_not_split():
    steps = steps_of(sample(100))
    assert split_off(steps["drill"], "mm") is None
    thin = [step for step in steps.values() if step.roles.mills == "flat" and step.fields.depth.value <= LEFT]
    assert all(split_off(step, "mm") is None for step in thin)


def test_a_size_belongs_where_the_face_is_cut_last():
    assert where_it_belongs(None) == ""
    step = steps_of(sample(100))["face-finish"]
    assert str(step.number) in where_it_belongs(step)
