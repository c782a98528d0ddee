"""Faces that are cut again where the work should have been turned, and what a step takes off a face."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.catalog.trade.surfaces import read_faces
from jobsheet.model.shape import Edge, Slab
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


def cutting(index, set_up, face, off, *, wall=False):
    """A step that takes so much off a face [mm]."""
    shape = Edge("left", off * 1e-3, 0.02) if wall else Slab(off * 1e-3)
    return SimpleNamespace(
        index=index,
        makes=(face,),
        set_up=SimpleNamespace(key=set_up),
        cut=SimpleNamespace(shapes=(SimpleNamespace(shape=shape),)),
    )


def planned(*steps, stays=()):
    made = {}
    for step in steps:
        made.setdefault(step.makes[0], []).append(step.index)
    job = replace(
        sample(101), finished=type(sample(101).finished)(), stock=replace(sample(101).stock, as_bought=None)
    )
    if stays:
        job = replace(job, stock=replace(job.stock, as_bought=read_faces(", ".join(stays))))
    return SimpleNamespace(steps=steps, made={face: tuple(found) for face, found in made.items()}, job=job)


@pytest.mark.parametrize(
    ("steps", "stays", "told"),
    [
        ([("one", "top", 2), ("two", "top", 2)], (), True), ([("one", "top", 2), ("two", "top", 1)], (), True),
        ([("one", "top", 2), ("two", "top", 0.99)], (), False), ([("one", "top", 2), ("two", "top", 2)], ("bottom",), False),
        ([("one", "top", 2), ("one", "top", 2)], (), False), ([("one", "top", 2), ("two", "bottom", 2)], (), False),
        ([("one", "top", 2), ("two", "top", 2), ("two", "bottom", 2)], (), False), ([("one", "top", 2)], (), False),
        # Both cuts of the first set-up are what came off before: half of 3 in all.
        ([("one", "top", 2), ("one", "top", 1), ("two", "top", 1.4)], (), False), ([("one", "top", 2), ("one", "top", 1), ("two", "top", 1.5)], (), True),
        # What is no more than a finishing pass is one, whatever came off before.
        ([("one", "top", 0.4), ("two", "top", 0.5)], (), False), ([("one", "top", 0.4), ("two", "top", 0.51)], (), True),
        ([("one", "top", 2), ("two", "top", 2)], ("left",), True),
    ],
)  # fmt: skip
def test_a_face_is_cut_again_where_another_set_up_takes_half_as_much_and_its_opposite_is_not_cut(
    steps, stays, told
):
    plan = planned(*(cutting(index, *one) for index, one in enumerate(steps)), stays=stays)
    found = list(cut_again(plan, 0.5e-3))
    assert [(face, first.index) for face, first, _ in found] == ([("top", 0)] if told else [])
    if told:
        assert found[0][2].set_up.key == "two"


def test_off_a_side_comes_the_width_of_its_cut():
    assert off(cutting(0, "one", "left", 3, wall=True), "left") == pytest.approx(0.003)
    assert off(cutting(0, "one", "left", 3), "left") == pytest.approx(0.003)
    assert off(cutting(0, "one", "left", 3), "right") == 0.0
