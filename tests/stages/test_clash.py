"""What a step runs into: positions worked by hand, and a brute force that looks at points of both shapes."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jobsheet.model.held_work import Body
from jobsheet.model.lying import Lying
from jobsheet.model.shape import Edge, Groove, Hole, Recess, Slab
from jobsheet.stages.clash import Swept, _beside, clashes, sweeps
from jobsheet.stages.course import Cut, Sized

BOX = ((0.0, 0.1), (0.0, 0.06), (0.0, 0.02))
LIE = Lying(near="front", far="rear", left="left", right="right", up="top", down="bottom", box=BOX)


def cut(shape, *corners, depth=None):
    return Cut(
        key="k", number=10, set_up="s", before=LIE, after=LIE,
        shapes=(Sized(shape=shape, corners=corners, depth=getattr(shape, "depth", depth)),),
    )  # fmt: skip


def strap(x, y, **more):
    """A strap from the front, 30 wide, its nose at y; 14 thick on top of the work."""
    return Body(part="strap", low=(x - 0.015, y - 0.07, 0.02), high=(x + 0.015, y, 0.034), **more)


def test_facing_under_straps_meets_them():
    (met,) = clashes(cut(Slab(0.0005)), (strap(0.05, 0.01),), 0.025)
    assert (met.part, met.by) == ("strap", "cutter")
    assert met.sure


def test_facing_meets_no_strap_that_holds_on_a_step_below():
    low = Body(part="strap", low=(0.035, -0.07, 0.005), high=(0.065, -0.01, 0.019))
    assert clashes(cut(Slab(0.0005)), (low,), 0.025) == ()


def test_a_slot_that_ends_before_the_strap_is_clear():
    """Slot 10 wide along y 30, from x 20 to 60; a strap from the front
    reaches y 24: one millimetre of air.
    """
    groove = Groove(0.02, 0.03, 0.06, 0.03, 0.01, 0.005)
    ends = ((0.02, 0.03), (0.06, 0.03))
    assert clashes(cut(groove, *ends), (strap(0.05, 0.024),), 0.005) == ()
    (met,) = clashes(cut(groove, *ends), (strap(0.05, 0.026),), 0.005)
    assert met.part == "strap"


def test_the_cutter_outside_a_wall_meets_a_stop_there():
    """2 off the left side with a 12 mm cutter: it stands from x -10 to 2; a pin 10
    wide stands right before the side.
    """
    pin = Body(part="stop", low=(-0.01, 0.025, 0.0), high=(0.0, 0.035, 0.012), axis=2)
    assert (
        clashes(cut(Edge("left", 0.002, 0.005)), (pin,), 0.006) == ()
    )  # 5 deep: ends at 15, over the pin's 12
    (met,) = clashes(cut(Edge("left", 0.002, 0.010)), (pin,), 0.006)
    assert met.deep == pytest.approx(0.002)
    assert clashes(cut(Edge("right", 0.002, 0.010)), (pin,), 0.006) == ()


def test_a_drill_goes_through_into_a_parallel():
    """10 mm drill, 118°: its point is 3.0 long, one more millimetre: it comes out 4.0 under the work."""
    hole = Hole(0.008, 0.03, 0.010, None, math.radians(118))
    parallel = Body(part="parallel", low=(0.0, 0.0, -0.011), high=(0.006, 0.06, 0.0))
    (met,) = clashes(cut(hole, (0.008, 0.03)), (parallel,), 0.005)
    assert (met.part, met.by) == ("parallel", "drill")
    assert met.deep == pytest.approx(0.005 / math.tan(math.radians(59)) + 0.001)
    away = Hole(0.012, 0.03, 0.010, None, math.radians(118))
    assert clashes(cut(away, (0.012, 0.03)), (parallel,), 0.005) == ()


def test_a_holder_meets_a_stud_that_the_drill_passes():
    """A 6 mm drill 20 beside a stud of 12 passes it; 40 out and 12 deep its holder comes down
    to 8 + 40 = 48; the stud ends at 59.
    """
    stud = Body(part="stud", low=(0.044, 0.024, 0.0), high=(0.056, 0.036, 0.059), axis=2)
    hole = Hole(0.07, 0.03, 0.006, 0.012)
    assert clashes(cut(hole, (0.07, 0.03)), (stud,), 0.003) == ()
    (met,) = clashes(cut(hole, (0.07, 0.03)), (stud,), 0.003, stick_out=0.040)
    assert met.by == "holder"
    assert not met.sure
    assert clashes(cut(hole, (0.07, 0.03)), (stud,), 0.003, stick_out=0.055) == ()


def test_what_is_sure_stands_first():
    found = clashes(cut(Slab(0.001)), (strap(0.03, 0.01, sure=False), strap(0.07, 0.01)), 0.025)
    assert [one.sure for one in found] == [True, False]


def test_a_pocket_goes_over_a_screw():
    pocket = Recess(0.05, 0.03, 0.03, 0.02, 0.005, 0.004)
    screw = Body(part="screw", low=(0.062, 0.025, 0.02), high=(0.071, 0.034, 0.026), axis=2)
    (met,) = clashes(cut(pocket, (0.05, 0.03)), (screw,), 0.005)
    assert met.part == "screw"


NEAR = st.floats(-0.05, 0.05, allow_nan=False)
SIZE = st.floats(0.002, 0.03)
GRID = 41


def points_of_field(low, high):
    for i, j in itertools.product(range(GRID), repeat=2):
        yield low[0] + (high[0] - low[0]) * i / (GRID - 1), low[1] + (high[1] - low[1]) * j / (GRID - 1)


def inside(at, swept):
    """Whether a point is in what is swept, by plain distance to many points of its line, or its bounds."""
    if swept.field is not None:
        (x0, y0), (x1, y1) = swept.field
        return x0 <= at[0] <= x1 and y0 <= at[1] <= y1
    (x0, y0), (x1, y1) = swept.line
    steps = 200
    return (
        min(math.dist(at, (x0 + (x1 - x0) * i / steps, y0 + (y1 - y0) * i / steps)) for i in range(steps + 1))
        <= swept.radius
    )


@settings(max_examples=60, deadline=None)
@given(NEAR, NEAR, NEAR, NEAR, SIZE, NEAR, NEAR, SIZE, SIZE, st.booleans())
def test_both_overlap_where_a_point_of_the_one_is_in_the_other(
    x0, y0, x1, y1, radius, x, y, wide, high, standing
):
    """Sampled points prove a clash; where the samples find none, both are at
    most two grid steps from touching.
    """
    swept = Swept(by="cutter", line=((x0, y0), (x1, y1)), radius=radius, low=0.0)
    wide, high = (wide, wide) if standing else (wide, high)
    body = Body(part="strap", low=(x, y, 0.0), high=(x + wide, y + high, 0.01), axis=2 if standing else None)
    sampled = False
    for at in points_of_field((x, y), (x + wide, y + high)):
        if standing and math.dist(at, (x + wide / 2, y + wide / 2)) > wide / 2 * (1 - 1e-9):
            continue
        if inside(at, swept):
            sampled = True
            break
    said = _beside(swept, body)
    if sampled:
        larger = Swept(by="cutter", line=swept.line, radius=radius + 1e-5, low=0.0)
        assert said or _beside(larger, body)
    elif said:
        step = max(wide, high) / (GRID - 1)
        smaller = Swept(by="cutter", line=swept.line, radius=max(radius - 2 * step, 1e-9), low=0.0)
        assert not _beside(smaller, body) or radius <= 2 * step


def test_a_side_cut_runs_out_at_both_ends():
    (one,) = sweeps(cut(Edge("front", 0.003, 0.01)), 0.006)
    assert one.line == ((-0.002, pytest.approx(-0.003)), (pytest.approx(0.102), pytest.approx(-0.003)))
    assert one.low == pytest.approx(0.01)


def test_the_holder_is_wider_than_its_cutter():
    """A slot 10 wide and 15 deep, the cutter 20 out: the holder is 32 wide from level 25 up, 16 to each side
    of y 30; a strap to y 24 lies clear of the cutter, is 14 thick on top of 20 and reaches 34.
    """
    groove = Groove(0.02, 0.03, 0.06, 0.03, 0.01, 0.015)
    ends = ((0.02, 0.03), (0.06, 0.03))
    assert clashes(cut(groove, *ends), (strap(0.05, 0.024),), 0.005, 0.060) == ()
    (met,) = clashes(cut(groove, *ends), (strap(0.05, 0.024),), 0.005, 0.020)
    assert met.by == "holder"
    assert met.deep == pytest.approx(0.034 - 0.025)


def test_the_holder_over_a_face_goes_wider_too():
    """A 10 mm cutter runs 7 out over an end, its holder 11 wider, 18; a stud stands
    from 10 to 22 off the end, 60 high.
    """
    stud = Body(part="stud", low=(-0.022, 0.02, 0.0), high=(-0.010, 0.032, 0.06), axis=2)
    assert clashes(cut(Slab(0.0005)), (stud,), 0.005) == ()
    (met,) = clashes(cut(Slab(0.0005)), (stud,), 0.005, 0.03)
    assert met.by == "holder"
