"""Metal between cuts, against sizes that a drawing gives: centres apart less both halves."""

from __future__ import annotations

import pytest

from jobsheet.report.pictured.near_walls import Outlined, near_walls, outlined, wall
from tests.report.closer_jobs import cuts_of, plan_of

MM = 1e-3


def slot(step, start, end, wide):
    return Outlined(step=step, spine=tuple((x * MM, y * MM) for x, y in (start, end)), radius=wide / 2 * MM)


def hole(step, at, wide):
    return Outlined(step=step, spine=((at[0] * MM, at[1] * MM),), radius=wide / 2 * MM, is_hole=True)


def pocket(step, low, high, radius=3.0):
    (x, y), (x2, y2) = ((at + radius) * MM for at in low), ((at - radius) * MM for at in high)
    return Outlined(step=step, spine=((x, y), (x2, y), (x2, y2), (x, y2)), radius=radius * MM)


def test_two_slots_side_by_side_leave_their_distance_less_a_width():
    """3 wide, 4.5 apart: 1.5 of metal, measured half way along where they run side by side."""
    made = wall(slot(10, (30, 20), (50, 20), 3), slot(20, (40, 24.5), (60, 24.5), 3))
    assert made.thick == pytest.approx(1.5 * MM)
    assert made.middle == pytest.approx((45 * MM, 22.25 * MM))


def test_a_hole_beyond_the_round_end_of_a_slot():
    """The end lies 51.5 along, the hole begins at 51.75."""
    assert wall(slot(10, (30, 20), (50, 20), 3), hole(20, (53, 20), 2.5)).thick == pytest.approx(0.25 * MM)


def test_two_pockets_and_their_corners():
    """Side by side 2 apart; corner to corner the round corners of 3 leave more than the boxes would."""
    assert wall(pocket(10, (0, 0), (20, 20)), pocket(20, (22, 0), (40, 20))).thick == pytest.approx(2 * MM)
    far = (2 * 8**2) ** 0.5 - 6  # centres of the corners 8 apart both ways, less two radii
    made = wall(pocket(10, (0, 0), (20, 20)), pocket(20, (22, 22), (40, 40)))
    assert made.thick == pytest.approx(far * MM)


@pytest.mark.parametrize(
    "other",
    [
        slot(20, (40, 10), (40, 30), 3),  # crosses it
        slot(20, (50, 20), (70, 20), 3),  # goes on from its end
        slot(20, (30, 20.5), (50, 20.5), 3),  # widens it
        hole(20, (30, 20), 3),  # lets the cutter in
        pocket(20, (20, 10), (60, 30)),  # has it in it
    ],
)
def test_what_meets_leaves_no_wall(other):
    assert wall(slot(10, (30, 20), (50, 20), 3), other).thick <= 0


def test_a_slot_that_is_widened_has_its_last_walls():
    """9 wide, then half a millimetre off both sides: what stands beside it is 10 wide."""
    cuts = (
        slot(10, (30, 20), (50, 20), 9),
        slot(20, (30, 19.5), (50, 19.5), 9),
        slot(30, (30, 20.5), (50, 20.5), 9),
        slot(40, (30, 28), (50, 28), 4),
    )
    (made,) = near_walls(cuts, 5 * MM)
    assert made.thick == pytest.approx(1.0 * MM)  # 8 apart, less 5 and 2


def test_thick_walls_and_two_holes_are_none():
    assert not near_walls((slot(10, (30, 20), (50, 20), 3), slot(20, (30, 40), (50, 40), 3)), 5 * MM)
    assert not near_walls((hole(10, (30, 20), 5), hole(20, (36, 20), 5)), 5 * MM)


def test_a_hole_has_only_its_thinnest_wall():
    cuts = (
        slot(10, (30, 20), (50, 20), 3),
        slot(20, (30, 24.5), (50, 24.5), 3),
        hole(30, (53, 20), 2.5),
    )
    thick = sorted(round(each.thick / MM, 3) for each in near_walls(cuts, 5 * MM))
    assert thick == [0.25, 1.5]


def test_the_cuts_of_a_set_up_lie_where_its_work_is_as_it_begins():
    """Its left end was milled 2 off in between: the zero moves with the end, the picture does not."""
    plan = plan_of(ends="off")
    made = {cut.step: cut for cut in outlined(plan.courses[0].lie, cuts_of(plan)) if not cut.is_hole}
    assert made[20].spine[0] == pytest.approx((32 * MM, 20 * MM))
    assert made[20].low == pytest.approx((30.5 * MM, 18.5 * MM))


def test_a_step_at_the_side_has_its_wall_there():
    """20 off the right of 100, 4 deep of 12: a cut with a wall at 80; one that goes through is the new end."""
    plan = plan_of(ends="step")
    (step,) = [cut for cut in outlined(plan.courses[0].lie, cuts_of(plan)) if cut.step == 10]
    assert (step.low[0], step.high[0]) == pytest.approx((80 * MM, 100 * MM))
    assert not [
        cut
        for cut in outlined(plan_of(ends="off").courses[0].lie, cuts_of(plan_of(ends="off")))
        if cut.step == 10
    ]
