"""Asks whether a swivelled vice was set finely enough for what is asked."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, in_vice, plan_of
from jobsheet.review.plan.held import does, fact
from jobsheet.review.rule import View, remark, rule
from jobsheet.units.show import trimmed

#: The scale of a swivel base is good to so much (holding-and-more-kinds A1: 0.25°, common practice).
SCALE = math.radians(0.25)


@rule("angle-by-the-scale", "Angle by the scale", "scrap")
def angle_by_the_scale(view: View) -> Iterator[Remark]:
    """The vice is turned by its scale, and squareness or parallelism is asked closer than a scale sets it.

    Because: A scale is good to a quarter of a degree: over 80 mm that is a third of a millimetre.
    Not so: a swivel vice set by its scale, square within 0.05
    So: the same vice set with the indicator
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        if not in_vice(set_up, steps[0].lie) or fact(set_up, "set_by") != "scale":
            continue
        if any(does(step.operation, "check vice", "square up") for step in steps):
            continue
        off = max(steps[0].lie.size[:2]) * math.tan(SCALE)
        asking = next((step for step in steps if (asked := _asked(step)) is not None and asked < off), None)
        if asking is None:
            continue
        message = f"The scale may be {trimmed(off * 1e3, 2)} mm out over this work, and {trimmed((_asked(asking) or 0.0) * 1e3, 3)} mm is asked: set it with the indicator"
        fix = Fix("Set with the indicator", set_field(f"holding:{set_up.key}", "set_by", "indicator"))
        yield remark(view, "angle-by-the-scale", message, asking.key, fix=fix, set_up=set_up.key)


def _asked(step: Step) -> float | None:
    """The closer of squareness and parallelism that is asked of a step [m]."""
    asked = getattr(step.fields, "tolerances", None)
    found = [
        one for one in (getattr(asked, "square", None), getattr(asked, "parallel", None)) if one is not None
    ]
    return min(found, default=None)
