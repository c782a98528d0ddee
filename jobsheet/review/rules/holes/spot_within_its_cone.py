"""Asks whether a spot drill stays within its cone."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.rule import View, remark, rule

#: A hair over the cone is none [m].
HAIR = 0.05e-3
#: What is offered, as a share of the cone (common practice, no source).
SHARE = 0.9


@rule("spot-within-its-cone", "A spot within its cone", "rework")
def spot_within_its_cone(view: View) -> Iterator[Remark]:
    """A spot drill goes deeper than its cone is long, so that its body enters the work. Centre drills are meant to go deeper.

    Because: Its flutes are not relieved: the body rubs, and the hole is as wide as the spot drill.
    Not so: spot drill 8 mm, 90°, 6 deep
    So: spot drill 8 mm, 90°, 3 deep
    From: common practice; geometry of the cone
    """
    for step in plan_of(view).steps:
        cone = _cone(step)
        depth = getattr(getattr(step.fields, "depth", None), "value", None)
        if cone is None or depth is None or depth <= cone + HAIR:
            continue
        units = view.job.units
        message = f"{length(depth, units)} deep, and the cone is {length(cone, units)} long: its body enters the work"
        text = typed(SHARE * cone, units)
        fix = Fix(f"Spot {text} deep", set_field(step.key, "depth", text), (step.key,))
        yield remark(view, "spot-within-its-cone", message, step.key, set_up=step.set_up.key, fix=fix)


def _cone(step: Step) -> float | None:
    """How long the cone of a spot drill is [m]."""
    cutter = getattr(step.fields, "cutter", None)
    if step.roles.hole not in ("spot", "drill") or cutter is None or cutter.kind != "spot drill":
        return None
    if not cutter.diameter or not cutter.point_angle:
        return None
    return float(cutter.diameter) / 2 / math.tan(cutter.point_angle / 2)
