"""Holes in the floor of a step, a slot or a pocket begin at that floor;
closed forms say how much they take.
"""

from __future__ import annotations

import math

import pytest

from jobsheet.finished.finished_part import finished_part
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import reviewed
from jobsheet.review.plan.solid_facts import facts_of
from jobsheet.stages.against_part import against
from jobsheet.stages.course import course_of
from jobsheet.stages.part_solid import differences
from jobsheet.stages.solids import Modeller
from jobsheet.storage.job_file import job_from_text

STEP = """      - key: floor
        number: 10
        kind: side-mill
        cutter: end mill 16, 4 teeth
        way: conventional
        side: right
        width: 30
        depth: 6
        feed: 40
        spindle: 320 rpm
"""
SLOT = """      - key: floor
        number: 10
        kind: slot
        cutter: slot drill 16
        ends:
          - [45, 0]
          - [45, 40]
        depth: 6
        open ends: both open
        feed: 40
        spindle: 320 rpm
"""
POCKET = """      - key: floor
        number: 10
        kind: pocket
        cutter: slot drill 8
        centre: 45, 20
        length: 24
        width: 20
        depth: 6
        feed: 40
        spindle: 320 rpm
"""
FLOORS = {"step": STEP, "slot": SLOT, "pocket": POCKET}
LINES = {
    "step": "step 30 x 6 right end",
    "slot": "slot 16 x 6 deep front to rear at 45",
    "pocket": "pocket 24 x 20 x 6 deep R4 at 45, 20",
}
SPOT = """      - key: spot
        number: 20
        kind: spot-drill
        cutter: spot drill 10, 90°
        at: 45, 20
        to: 6
        feed: 0.05
        spindle: 900 rpm
"""
DRILL = """      - key: drill
        number: 30
        kind: drill
        cutter: drill 8, 118°
        at: 45, 20
        depth: 10
        feed: 0.1
        spindle: 800 rpm
"""
#: A cone of 90° to 6 mm: radius 3, height 3 [mm³].
CONE = math.pi * 3**2 * 3 / 3
#: A hole of 8, 10 deep at its full diameter, with its point of 118° [mm³].
HOLE = math.pi * 16 * 10 + math.pi * 16 / 3 * 4 / math.tan(math.radians(59))


def job_of(*steps, lines=()):
    said = "".join(f"    - {line}\n" for line in lines)
    return job_from_text(
        "format: 2\nunits: mm\nmaterial: S235\nmachine: knee-mill-k-2\nstock:\n  length: 60\n  width: 40\n  height: 25\n"
        + (
            f"finished:\n  sizes: 60 as bought x 40 as bought x 25 as bought\n  features:\n{said}"
            if said
            else ""
        )
        + "set-ups:\n  - key: set-up-1\n    number: 1\n    up: top\n    operator: front\n    zero:\n      x from: left\n      y from: front\n"
        + "    operations:\n"
        + "".join(steps),
        "job",
    )


def stages_of(job):
    reckoned = Reckoner().reckon(job)
    course = course_of(reckoned.job, reckoned.settings)
    return {stage.cut.key: stage for stage in Modeller().stages(course)[1:]}, course, reckoned


@pytest.mark.parametrize("name", FLOORS)
def test_a_spot_and_a_blind_hole_take_what_their_shapes_hold(name):
    stages, _, _ = stages_of(job_of(FLOORS[name], SPOT))
    # Facets of 24 or 32 sides hold 1 to 2 % less than the round.
    assert stages["spot"].removed * 1e9 == pytest.approx(CONE, rel=0.02)
    stages, _, _ = stages_of(job_of(FLOORS[name], DRILL))
    assert stages["drill"].removed * 1e9 == pytest.approx(HOLE, rel=0.02)
    low = min(z for z in stages["drill"].tool.bounding_box()[2:3])
    point = 4 / math.tan(math.radians(59))
    assert low == pytest.approx(25 - 6 - 10 - point, abs=0.01)


@pytest.mark.parametrize("name", FLOORS)
def test_beside_a_floor_and_before_it_a_hole_begins_at_the_top(name):
    beside = SPOT.replace("45, 20", "10, 20")
    stages, course, _ = stages_of(job_of(FLOORS[name], beside))
    assert stages["spot"].removed * 1e9 == pytest.approx(CONE, rel=0.02)
    assert [one.top for cut in course.cuts for one in cut.shapes] == [0.0, 0.0]
    _, course, _ = stages_of(job_of(DRILL, FLOORS[name]))
    assert all(one.top == 0.0 for cut in course.cuts for one in cut.shapes)


@pytest.mark.parametrize("name", FLOORS)
def test_no_step_there_cuts_only_air(name):
    job = job_of(FLOORS[name], SPOT, DRILL.replace("depth: 10", "depth: through"))
    _, _, reckoned = stages_of(job)
    found = reviewed(job, reckoned, facts_of(job, reckoned)).open
    assert not [one for one in found if one.rule in ("cuts-only-air", "removal-agrees-with-the-figures")]


@pytest.mark.parametrize("name", FLOORS)
def test_a_hole_that_the_drawing_has_in_a_floor_counts_from_it_too(name):
    job = job_of(FLOORS[name], DRILL, lines=(LINES[name], "hole 8 x 10 at 45, 20"))
    stages, course, _ = stages_of(job)
    part = finished_part(job)
    assert [one.state for one in against(course, part).holes] == ["made"]
    first = next(iter(stages.values())).before
    assert differences([first, *stages.values()], part) == ()
    shallow = job_of(FLOORS[name], DRILL, lines=(LINES[name], "hole 8 x 14 at 45, 20"))
    _, course, _ = stages_of(shallow)
    assert [one.state for one in against(course, finished_part(shallow)).holes] == ["too shallow"]
