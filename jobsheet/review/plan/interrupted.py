"""Whether a cut over a face is interrupted by what was opened in it before."""

from __future__ import annotations

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.shape import Groove, Hole, Recess
from jobsheet.review.plan.faces import Plan, Step
from jobsheet.stages.course import is_through


def opened_before(plan: Plan, step: Step, *, own_holes: bool) -> Step | None:
    """The first step before it that left a hole, slot or pocket open in the face that it goes over.

    With `own_holes` also holes that were made from this face itself; without them only those
    that come through from the other side.
    """
    up = step.lie.up
    for earlier in plan.steps[: step.index]:
        for sized in earlier.cut.shapes:
            shape = sized.shape
            if not isinstance(shape, Hole | Groove | Recess):
                continue
            if isinstance(shape, Hole) and (shape.threaded or sized.depth == 0.0):
                continue
            if earlier.lie.up == up and (own_holes or not isinstance(shape, Hole)):
                return earlier
            if earlier.lie.up == OPPOSITE[up] and is_through(sized, earlier.lie.size[2]):
                return earlier
    return None
