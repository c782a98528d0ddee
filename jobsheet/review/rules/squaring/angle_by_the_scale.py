"""Asks whether a swivelled vice was set finely enough for what is asked."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.asked_form import asked_of_part, asked_of_step
from jobsheet.review.plan.faces import Step, in_vice, plan_of
from jobsheet.review.plan.held import fact
from jobsheet.review.plan.lengths import fine, length
from jobsheet.review.rule import View, remark, rule

#: The scale of a swivel base is good to so much (holding-and-more-kinds A1: 0.25°, common practice).
SCALE = math.radians(0.25)


@rule("angle-by-the-scale", "Angle by the scale", "scrap")
def angle_by_the_scale(view: View) -> Iterator[Remark]:
    """The vice is turned by its scale, and squareness or parallelism is asked closer than a scale sets it, by a step or of the finished part.

    Where the jaw is trued with the indicator afterwards, the angle is set by that and no longer by the scale: the holding says so.

    Because: A scale is good to a quarter of a degree: over 80 mm that is a third of a millimetre.
    Not so: a swivel vice set by its scale, square within 0.05
    So: the same vice set with the indicator
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        if not in_vice(set_up, steps[0].lie) or fact(set_up, "set_by") != "scale":
            continue
        found = next((one for step in steps if (one := _too_close(view, step)) is not None), None)
        if found is None:
            continue
        asking, asked, off = found
        message = f"The scale may be {length(off, view.job.units)} out over this work, and {fine(asked, view.job.units)} is asked: set it with the indicator"
        fix = Fix("Set with the indicator", set_field(f"holding:{set_up.key}", "set_by", "indicator"))
        yield remark(view, "angle-by-the-scale", message, asking.key, fix=fix, set_up=set_up.key)


def _too_close(view: View, step: Step) -> tuple[Step, float, float] | None:
    """The step, what is asked of it and how far a scale may be out over that length [m]; None where a scale is close enough."""
    along, across, _ = step.lie.size
    asked = [(max(along, across), one) for one in (asked_of_step(step),) if one is not None]
    for face, within in asked_of_part(view.job, step):
        if face != step.lie.up:  # turning the vice leaves the face that is up as true as it was
            asked.append((across if face in (step.lie.left, step.lie.right) else along, within))
    for over, within in asked:
        off = over * math.tan(SCALE)
        if within < off:
            return step, within, off
    return None
