"""Asks what a hole that goes through comes out over where the work stands in a chuck."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.model.shape import Hole
from jobsheet.review.plan.chucked import Chucked, chucked
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.rule import View, remark, rule
from jobsheet.stages.course import is_through

#: The bore of a chuck under work that it grips from outside is at least so much of what it
#: grips (common practice, no source).
BORE = 1 / 3


@rule("room-below-in-the-chuck", "Room below in the chuck", "hazard")
def room_below_in_the_chuck(view: View) -> Iterator[Remark]:
    """Work stands up in a chuck, and a hole goes through it over the jaws or the body of the chuck.

    Quiet in the middle, where the bore of the chuck is: a third of the diameter that is gripped.

    Because: The drill comes out into hard jaws or into the chuck: it breaks, and spoils them.
    Not so: a flange of 100 flat in a chuck, holes on a circle of 70 drilled through
    So: the holes drilled blind, or the flange strapped down over scrap
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        found = chucked(set_up, steps[0])
        if found is None or not found.upright or found.grip is None:
            continue
        step = next((step for step in steps if step.cuts and _comes_out(found, step)), None)
        if step is None:
            continue
        message = f"Step {step.number} goes through, and jaws or body of the chuck are under it"
        yield remark(
            view, "room-below-in-the-chuck", message, step.key, set_up=set_up.key,
            by_hand="drill it blind, or hold the work over scrap; where parallels hold it off the chuck and no jaw is below, set this aside and say so",
        )  # fmt: skip


def _comes_out(found: Chucked, step: Step) -> bool:
    """Whether a hole of it goes through beside the bore, over what the jaws grip."""
    middle = (step.lie.size[0] / 2, step.lie.size[1] / 2)
    grips = found.diameter / 2
    for sized in step.cut.shapes:
        shape = sized.shape
        if not isinstance(shape, Hole) or shape.threaded or not is_through(sized, step.lie.size[2]):
            continue
        apart, half = math.dist(sized.corners[0], middle), shape.diameter / 2
        if apart + half > BORE * grips + 1e-9 and apart - half < grips:
            return True
    return False
