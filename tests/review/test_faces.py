"""The state of every face before every step, and what a step measures from,
against the scenario's own words.
"""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.catalog.trade.surfaces import read_faces
from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.model.shape import Edge, Hole, Slab
from jobsheet.model.stock import FACES
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.plan import faces
from jobsheet.review.plan.faces import (
    AS_BOUGHT,
    MACHINED,
    RAW,
    measured_across,
    plan_of,
    positions,
    width_of_limits,
    zero_faces,
)
from jobsheet.review.rule import View
from jobsheet.stages.course import Sized
from jobsheet.storage.job_file import read_job

from .views_read import sample, steps_of


def plan(job):
    return plan_of(View(job, Reckoner().reckon(job)))


@pytest.fixture
def block(samples):
    return plan(read_job(samples / "hm-101-setting-block.yaml"))


def test_faces_are_made_in_the_order_of_the_scenario(block):
    """HM-101 squares face 1 (top), 2 (front), 4 (rear), 3 (bottom), then both
    ends: steps 20, 40, 50, 60, 70, 80.
    """
    order = sorted(FACES, key=lambda face: block.first_cut(face).index)
    assert order == ["top", "front", "rear", "bottom", "left", "right"]
    assert [block.first_cut(face).number for face in order] == [20, 40, 50, 60, 70, 80]


def test_a_face_is_raw_until_its_first_cut(block):
    for face in FACES:
        first = block.first_cut(face).index
        assert block.state(face, first) == RAW
        assert block.state(face, first + 1) == MACHINED


def test_a_face_that_no_step_makes_stays_as_bought(samples):
    """HM-102 is 12 thick as rolled."""
    found = plan(read_job(samples / "hm-102-slide-plate.yaml"))
    assert {face for face in FACES if found.state(face, 99) == AS_BOUGHT} == {"top", "bottom"}


def test_the_stock_keeps_faces_as_bought(samples):
    job = read_job(samples / "hm-102-slide-plate.yaml")
    job = replace(job, stock=replace(job.stock, as_bought=read_faces("top, bottom, Ends")))
    assert plan(job).state("left", 0) == AS_BOUGHT
    assert plan(job).state("front", 0) == RAW


def test_sizes_are_measured_from_the_face_opposite(block):
    """Face 4 to 40.00 from face 2, face 3 to 25.00 from face 1, end 6 to 60.00 from end 5."""
    found = {step.number: across[0] for step in block.steps if (across := measured_across(step)) is not None}
    assert found == {55: "front", 65: "top", 80: "left"}


def test_a_step_of_a_side_is_measured_across_too(samples):
    """HM-103: the step 20 wide in a block of 80 leaves 60 from datum C."""
    found = plan(read_job(samples / "hm-103-pivot-block.yaml"))
    step = next(one for one in found.steps if one.key == "step")
    assert step.makes == ()
    face, left = measured_across(step)
    assert face == "left"
    assert left == pytest.approx(60e-3)


def test_the_zero_lies_on_the_datums_wherever_the_work_is_turned(samples):
    """HM-103: the threads count from B and C, the bore from A and C."""
    job = read_job(samples / "hm-103-pivot-block.yaml")
    found = plan(job)
    faces = dict(job.datums)
    steps = {one.key: set(zero_faces(one)) for one in found.steps}
    assert steps["tap"] == {faces["B"], faces["C"]}
    assert steps["ream"] == {faces["A"], faces["C"]}


def lying_step(shape=None, *, measure=None, **zero):
    """One step on the plate of 80 by 50 by 12 as it lies in its first set-up, cutting that shape alone."""
    step = steps_of(sample(100))["face-rough"]
    shapes = (Sized(shape=shape),) if shape is not None else ()
    size = read_size(measure, "mm") if measure is not None else None
    fields = SimpleNamespace(measure=size)
    set_up = replace(step.set_up, zero=replace(step.set_up.zero, **zero))
    return replace(
        step,
        cut=replace(step.cut, shapes=shapes),
        set_up=set_up,
        operation=SimpleNamespace(fields=fields, kind="face", key="x", number=1),
    )


class TestMeasuredAcross:
    """A size nearer to what is left than to what comes off goes across the work, from the face opposite."""

    @pytest.mark.parametrize(
        ("shape", "measure", "face", "left"),
        [
            (Slab(0.001), "11 ±0.1", "down", 11), (Slab(0.001), "1 ±0.1", None, 0), (Slab(0.004), "8", "down", 8), (Slab(0.004), "4", None, 0),
            (Edge("left", 0.010, 0.012), "70 ±0.1", "right", 70), (Edge("right", 0.010, 0.012), "70 ±0.1", "left", 70),
            (Edge("front", 0.010, 0.012), "40 ±0.1", "far", 40), (Edge("rear", 0.010, 0.012), "40 ±0.1", "near", 40),
            (Edge("rear", 0.010, 0.012), "10 ±0.1", None, 0),
            # A shoulder 5 deep: 5 is its depth, 10 its width, 40 what stands.
            (Edge("rear", 0.010, 0.005), "5 ±0.1", None, 0), (Edge("rear", 0.010, 0.005), "40 ±0.1", "near", 40),
            (Edge("rear", 0.010, 0.005), "10 ±0.1", None, 0), (Hole(0, 0, 0.005, None), "11", None, 0), (None, "11", None, 0),
            (Slab(0.001), None, None, 0),
            # Cut to the bottom it has no depth of its own: 15.5 is nearer to the 20 that are left than to the 30 that come off.
            (Edge("rear", 0.030, 0.013), "15.5", "near", 20), (Edge("rear", 0.030, 0.011), "15.5", None, 0),
        ],
    )  # fmt: skip
    def test_from_which_face_and_what_is_left(self, shape, measure, face, left):
        step = lying_step(shape, measure=measure)
        along, across, high = step.lie.size
        wrong = {
            "down": high - 0.012,
            "left": along - 0.080,
            "right": along - 0.080,
            "near": across - 0.050,
            "far": across - 0.050,
        }
        found = measured_across(step)
        if face is None:
            assert found is None
        else:
            assert found == (getattr(step.lie, face), pytest.approx(left * 1e-3 + wrong[face]))


@pytest.mark.parametrize(
    ("measure", "wide"), [("40 ±0.1", 0.2e-3), ("40 +0.05/0", 0.05e-3), ("40", None), (None, None)]
)
def test_how_wide_the_limits_are(measure, wide):
    assert width_of_limits(lying_step(measure=measure)) == (None if wide is None else pytest.approx(wide))


@pytest.mark.parametrize(
    ("x", "y"), [("left", "front"), ("right", "front"), ("left", "rear"), ("right", "rear")]
)
def test_the_zero_stands_on_the_faces_that_it_is_found_on(x, y):
    step = lying_step(x_from=x, y_from=y)
    lie = step.lie
    assert zero_faces(step) == (lie.left if x == "left" else lie.right, lie.near if y == "front" else lie.far)


def test_a_side_is_made_only_where_it_is_cut_to_the_bottom():
    """A shoulder leaves the side as it was; what is sawn off makes no face."""
    step = lying_step()
    high = step.lie.size[2]
    operation = sample(100).find("face-rough")[1]
    for shape, makes in (
        (Slab(0.001), (step.lie.up,)), (Edge("front", 0.002, high), (step.lie.near,)), (Edge("front", 0.002, high - 0.001), ()),
        (Edge("rear", 0.002, high), (step.lie.far,)), (Edge("left", 0.002, high), (step.lie.left,)), (Hole(0, 0, 0.005, None), ()),
    ):  # fmt: skip
        assert (
            faces._makes(operation, replace(step.cut, shapes=(Sized(shape=shape), Sized(shape=shape))))
            == makes
        )


@pytest.mark.parametrize("name", ["at", "centre", "ends", "start", "path"])
def test_a_step_goes_to_places_by_any_of_its_fields(name):
    assert positions(SimpleNamespace(**{name: ("a place",)}))
    assert not positions(SimpleNamespace(**{name: None}))
    assert not positions(SimpleNamespace())
