"""How work sits in a chuck: what stands out of it, and which end is free."""

from __future__ import annotations

import math

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.model.shape import Edge, Groove, Hole, Recess, Slab
from jobsheet.review.plan.chucked import Chucked, chucked, free_end, reaches
from jobsheet.stages.course import Sized

from .views_read import sample, steps_of


def in_chuck(**facts):
    job = SetField("holding:set-up-1", "kind", "chuck").apply(sample(100))
    for name, text in {"on": "dividing head", "lies": "along", "grip_length": "20", **facts}.items():
        job = SetField("holding:set-up-1", name, text).apply(job)
    return job


def test_no_chuck_holds_what_is_in_a_vice():
    assert chucked(sample(100).set_ups[0], steps_of(sample(100))["face-rough"]) is None


def test_what_is_not_gripped_stands_out_unless_it_is_said():
    job = in_chuck()
    first = steps_of(job)["face-rough"]
    found = chucked(job.set_ups[0], first)
    assert found.length == pytest.approx(first.lie.size[0])
    assert found.out == pytest.approx(found.length - 0.020)
    said = in_chuck(out="35")
    assert chucked(said.set_ups[0], steps_of(said)["face-rough"]).out == pytest.approx(0.035)


def test_every_part_of_a_cut_lies_within_the_work():
    job = in_chuck()
    steps = steps_of(job)
    found = chucked(job.set_ups[0], steps["face-rough"])
    for one, other in reaches(found, steps["face-rough"], steps["drill"]):
        assert 0 <= one <= found.length + 1e-9
        assert 0 <= other <= found.length + 1e-9


def test_the_end_that_is_found_is_free():
    assert free_end(in_chuck().set_ups[0]) in (0, 1, None)


def at(step, shape, *corners, depth=None, top=0.0):
    """The step with one cut alone, its places from the left near corner."""
    sized = Sized(shape=shape, corners=corners, depth=depth, top=top)
    return replace(step, cut=replace(step.cut, shapes=(sized,))), sized


def found_with(**more):
    return Chucked(
        **{
            "upright": False,
            "length": 0.1,
            "grip": 0.02,
            "out": 0.08,
            "diameter": 0.05,
            "tailstock": False,
            **more,
        }
    )


class TestWhereACutComesTo:
    """The plate of HM-100, 80 long, 50 wide and 12 high [mm] as it lies; measured from either end."""

    @pytest.fixture
    def first(self):
        step = steps_of(sample(100))["face-rough"]
        assert step.lie.size == pytest.approx((0.080, 0.050, 0.012), abs=0.6e-3)
        return step

    @pytest.mark.parametrize(
        ("shape", "corners", "low", "high"),
        [
            (Slab(0.001), (), 0, 80), (Edge("left", 0.005, 0.01), (), 0, 5), (Edge("front", 0.005, 0.01), (), 0, 80),
            (Edge("right", 0.005, 0.01), (), 75, 80), (Hole(0, 0, 0.010, None), ((0.02, 0.03),), 15, 25),
            (Hole(0, 0, 0.010, None), ((0.003, 0.03),), 0, 8), (Hole(0, 0, 0.010, None), ((0.078, 0.03),), 73, 80),
            (Groove(0, 0, 0, 0, 0.008, None), ((0.02, 0.01), (0.05, 0.01)), 16, 54),
            (Groove(0, 0, 0, 0, 0.008, None), ((0.05, 0.01), (0.02, 0.01)), 16, 54),
            (Recess(0, 0, 0.030, 0.010, 0.003, None), ((0.04, 0.025),), 25, 55),
        ],
    )  # fmt: skip
    def test_along_the_work(self, first, shape, corners, low, high):
        long = first.lie.size[0] * 1e3
        step, _ = at(first, shape, *corners)
        ((one, other),) = reaches(found_with(), first, step)
        # What goes to the right end, or a side from there, moves with the stock's own length.
        shift = long - 80 if high == 80 else 0.0
        begins = low + (shift if low == 75 else 0.0)
        assert (one * 1e3, other * 1e3) == pytest.approx((long - begins, high + shift))

    def test_a_shape_that_goes_nowhere_known_is_not_compared(self, first):
        step, _ = at(first, Hole(0, 0, 0.01, None))
        assert list(reaches(found_with(), first, step)) == []

    @pytest.mark.parametrize(
        ("shape", "corner", "inside"),
        [
            # Jaws grip ⌀50 in the middle: 25 from there.
            (Hole(0, 0, 0.010, 0.005), 19.9, True), (Hole(0, 0, 0.010, 0.005), 20.1, False),
            (Groove(0, 0, 0, 0, 0.010, 0.005), 19.9, True), (Groove(0, 0, 0, 0, 0.010, 0.005), 20.1, False),
            # 8 by 6 is 10 over its corners, 5 to each: by Pythagoras.
            (Recess(0, 0, 0.008, 0.006, 0.001, 0.005), 19.9, True), (Recess(0, 0, 0.008, 0.006, 0.001, 0.005), 20.1, False),
        ],
    )  # fmt: skip
    def test_what_lies_over_the_jaws_goes_down_inside_them(self, first, shape, corner, inside):
        middle = (first.lie.size[0] / 2 + corner * 1e-3, first.lie.size[1] / 2)
        step, _ = at(first, shape, middle, depth=0.005)
        assert (list(reaches(found_with(upright=True), first, step)) == []) is inside

    def test_how_far_down_what_is_cut_beside_them_comes(self, first):
        """A point of 90° is as long as half its diameter."""
        beside = (first.lie.size[0] / 2 + 0.03, first.lie.size[1] / 2)
        for shape, depth, top, deep in (
            (Slab(0.001), None, 0.0, 1), (Edge("left", 0.005, 0.004), None, 0.0, 4), (Hole(0, 0, 0.010, 0.005), 0.005, 0.0, 5),
            (Hole(0, 0, 0.010, 0.005, math.pi / 2), 0.005, 0.002, 12), (Groove(0, 0, 0, 0, 0.004, 0.005), 0.005, 0.003, 8),
        ):  # fmt: skip
            step, _ = at(first, shape, beside, depth=depth, top=top)
            ((one, other),) = reaches(found_with(upright=True), first, step)
            assert (one * 1e3, other * 1e3) == pytest.approx((deep, deep))
        step, _ = at(first, Hole(0, 0, 0.010, None, math.pi / 2), beside)
        assert next(reaches(found_with(upright=True), first, step))[0] == pytest.approx(
            first.lie.size[2] + 0.005
        )
        later = steps_of(sample(100))["drill"]  # the face has come down by then
        lowered = first.lie.size[2] - later.lie.size[2]
        assert lowered > 0
        step, _ = at(later, Slab(0.001))
        assert next(reaches(found_with(upright=True), first, step))[0] == pytest.approx(lowered + 0.001)


def test_a_diameter_that_is_not_said_is_the_smaller_side_over_the_axis():
    """Standing up the work is seen from above, lying along from its end."""
    job = in_chuck(diameter="33")
    assert chucked(job.set_ups[0], steps_of(job)["face-rough"]).diameter == pytest.approx(0.033)
    job = in_chuck()
    first = steps_of(job)["face-rough"]
    assert chucked(job.set_ups[0], first).diameter == pytest.approx(first.lie.size[2])
