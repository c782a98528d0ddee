"""Asks whether a large drill has a hole to run in."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.catalog.tools.webs import chisel, pilot
from jobsheet.model.figure import Limit
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.at_hand import at_hand, drill_near
from jobsheet.review.mending.fixes import Mend, added_before
from jobsheet.review.plan.from_solid import eased
from jobsheet.review.plan.hole_chains import HoleStep, holes_of
from jobsheet.review.plan.lengths import length, millimetres, typed
from jobsheet.review.rule import Needs, View, remark, rule

#: Pilots are taken in steps of this size [m] (drills by half millimetres; common practice).
STEP = 0.5e-3
#: Feed per turn of a small drill, as a share of its diameter (common practice, no source).
FEED = 0.01


@rule("pilot-for-a-large-drill", "Pilot for a large drill", "rework", needs=Needs.FIGURES)
def pilot_for_a_large_drill(view: View) -> Iterator[Remark]:
    """A large drill from the solid pushes most of its force through the web at its point, which does not cut.

    Because: A pilot as wide as the web takes away most of the push and of the wander.
    Not so: drill 9.0 from the solid in stainless, by the quill lever
    So: drill 3.0, then 9.0
    From: common practice; pilot from the web of a new drill
    """
    told: set[str] = set()
    for chain in holes_of(view.reckoned).chains:
        for step in chain.steps:
            if step.does != "drill" or step.cutter.kind != "drill" or step.key in told:
                continue
            setting = view.reckoned.settings[step.key]
            if getattr(step.fields, "hole", None) is not None:
                continue
            before = chain.hole_before(step)
            if before is not None and before.diameter >= chisel(step.diameter):
                continue
            if before is None and setting.pilot is not None:
                continue  # a hole that is there, though not by a step of this plan
            size, line, helped = _pilot(view, step)
            if not helped:
                continue
            told.add(step.key)
            push = next((one for one in helped if one.name == "quill-push"), None)
            asked = (
                f"the hand would need {push.demand:.0f} N"
                if push is not None
                else f"{helped[0].title.lower()} {helped[0].shown}"
            )
            message = f"{length(step.diameter, view.job.units)} from the solid, {asked}: drill a pilot of {length(size, view.job.units)} first"
            yield remark(
                view, "pilot-for-a-large-drill", message, step.key, set_up=step.set_up,
                fix=Fix(f"Add drill {length(size, view.job.units)} before {step.number}", _added(view, step, size, line)),
            )  # fmt: skip


def _pilot(view: View, step: HoleStep) -> tuple[float, str, tuple[Limit, ...]]:
    """The smallest pilot [m] that helps, its line and what it eases: one of the cabinet up to half the drill, else by half millimetres."""
    found, setting = pilot(step.diameter), view.reckoned.settings[step.key]
    for size, line in at_hand(view.job, "drill", found.low, step.diameter / 2):
        helped = eased(step.operation, setting, size)
        if helped:
            return size, line, helped
    size = math.ceil(found.low / STEP - 1e-6) * STEP
    most = max(size, math.ceil(found.high / STEP - 1e-6) * STEP)
    while size <= most * (1 + 1e-9):
        helped = eased(step.operation, setting, size)
        if helped:
            return size, f"drill {millimetres(size)} mm", helped
        size += STEP
    size, line = drill_near(view.job, most, found.low, most)
    return size, line, eased(step.operation, setting, size, enough=False)


def _added(view: View, step: HoleStep, size: float, line: str) -> Mend:
    fields, units = step.fields, view.job.units
    texts = {
        "cutter": line, "at": fields.at.text, "depth": fields.depth.text,
        "feed": typed(max(size * FEED, 0.02e-3), units),
    }  # fmt: skip
    if _deep(step, view) > 3 * size:
        texts["peck"] = typed(3 * size, units)
    return added_before(step.key, written.DRILL, texts)


def _deep(step: HoleStep, view: View) -> float:
    return step.depth if step.depth is not None else view.reckoned.settings[step.key].thickness
