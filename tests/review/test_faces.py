"""The state of every face before every step, and what a step measures from,
against the scenario's own words.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.catalog.trade.surfaces import read_faces
from jobsheet.model.stock import FACES
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.plan.faces import AS_BOUGHT, MACHINED, RAW, measured_across, plan_of, zero_faces
from jobsheet.review.rule import View
from jobsheet.storage.job_file import read_job


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
