"""Asks whether a deep slot or window is milled from solid."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.job import Job
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.added_hole import drilled_before
from jobsheet.review.mending.at_hand import drill_near
from jobsheet.review.plan.cuts import full_width, hole_within, outline, soft, total_depth
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule


@rule("drill-out-before-deep-slot", "Drill out before a deep slot", "rework")
def drill_out_before_deep_slot(view: View) -> Iterator[Remark]:
    """A slot or window is cut from solid deeper than the cutter is wide, in soft metals than twice that.

    Quiet where a hole is planned inside its outline before it, and where only its walls are passed.

    Because: One machinist broke three end mills doing it solid and none after drilling it out.
    Not so: slot 20 deep in steel with a 10 mm cutter
    So: a row of 9 mm holes, then the slot
    From: common practice
    """
    plan = plan_of(view)
    for step in plan.steps:
        diameter, depth = full_width(step), total_depth(step)
        if diameter is None or depth is None:
            continue
        most = (2.0 if soft(step.setting) else 1.0) * diameter
        if depth <= most + 1e-6 or hole_within(plan, step, diameter * 0.4):
            continue
        message = (
            f"{length(depth, view.job.units)} deep with a cutter of {length(diameter, view.job.units)} from solid: drill out most of it"
            " first, then mill webs and walls"
        )
        yield remark(
            view,
            "drill-out-before-deep-slot",
            message,
            step.key,
            fix=_drilled(view.job, step, diameter),
            set_up=step.set_up.key,
        )


def _drilled(job: Job, step: Step, diameter: float) -> Fix | None:
    """A drill a little smaller than the slot, at places along its middle that do not run into each other."""
    ends = outline(step)
    if not ends:
        return None
    usual = max(1.0, math.floor(diameter * 0.9e3 * 2) / 2) * 1e-3
    size, line = drill_near(job, usual, 0.6 * diameter, 0.95 * diameter)
    drill = size * 1e3
    (x1, y1), (x2, y2) = ends[0], ends[-1]
    way = math.hypot(x2 - x1, y2 - y1)
    count = 1 + int(way / (drill * 1.1e-3))
    places = "; ".join(
        ", ".join(
            length(one + (other - one) * i / max(1, count - 1), job.units).replace("−", "-")
            for one, other in ((x1, x2), (y1, y2))
        )
        for i in range(count)
    )
    depth = step.fields.depth
    texts = {"cutter": line, "at": places, "depth": depth.text, "what": f"Drill out for step {step.number}"}
    return Fix(f"Drill out before {step.number}", drilled_before(step.operation, step.setting, texts))
