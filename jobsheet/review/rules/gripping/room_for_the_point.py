"""Asks whether the point of a drill has room under the work."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.job import SetUp
from jobsheet.model.remark import Remark
from jobsheet.model.shape import Hole
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import fact, holding_roles, size
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule
from jobsheet.stages.course import is_through

#: A drill goes so far out beside its point [m] (holding-and-more-kinds A1:
#: parallels at least the point and 1 mm).
OUT = 1e-3


@rule("room-for-the-point", "Room for the point of the drill", "hazard")
def room_for_the_point(view: View) -> Iterator[Remark]:
    """A drill that goes through comes further out than the parallels, the packing or the backing under the work are high.

    Quiet where their height is not said; work that lies flat on bed or table is another remark.

    Because: It runs into the vice or the table, grabs and breaks.
    Not so: drill 20 through, on parallels 5 high
    So: drill 20 through, on parallels 10 high
    From: common practice; geometry of the point
    """
    for set_up, steps in plan_of(view).groups():
        room, what = _room(set_up)
        if room is None:
            continue
        needs = [(need, step) for step in steps if (need := _out(step)) is not None]
        if not needs:
            continue
        need, step = max(needs, key=lambda one: one[0])
        if need <= room + 1e-9:
            continue
        units = view.job.units
        message = f"Step {step.number} comes {length(need, units)} out of the work, and the {what} {'is' if what.endswith(('plate', 'packing', 'backing')) else 'are'} {length(room, units)} high: it runs into what is below"
        yield remark(
            view, "room-for-the-point", message, step.key, set_up=set_up.key,
            by_hand="take higher parallels or a thicker backing, or drill on scrap",
        )  # fmt: skip


def _room(set_up: SetUp) -> tuple[float | None, str]:
    """What lies under the work and how high it is [m]; None where that is not said."""
    rests = fact(set_up, "rests_on")
    if holding_roles(set_up).screwed:
        return size(set_up, "plate"), "plate"
    if rests in ("bed", "table"):
        return None, ""
    if (parallels := size(set_up, "parallels")) is not None:
        return parallels, "parallels"
    return size(set_up, "under"), rests or "packing"


def _out(step: Step) -> float | None:
    """How far the drills of a step come out of the work [m]; None where nothing goes through."""
    found = [
        (sized.shape.diameter / 2 / math.tan(sized.shape.point_angle / 2) if sized.shape.point_angle else 0.0)
        + OUT
        for sized in step.cut.shapes
        if isinstance(sized.shape, Hole) and not sized.shape.threaded and is_through(sized, step.lie.size[2])
    ]
    return max(found, default=None)
