"""Asks whether a large drill has a hole to run in."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.tools.webs import chisel
from jobsheet.model.figure import Limit
from jobsheet.model.remark import Remark
from jobsheet.review.mending.pilot_first import pilot_first, sizes
from jobsheet.review.plan.from_solid import eased
from jobsheet.review.plan.hole_chains import HoleStep, holes_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import Needs, View, remark, rule

BY_HAND = "drill from both sides, or take a long-series drill for the pilot; a large hole is bored"


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
            size, helped = _pilot(view, step)
            if not helped:
                continue
            told.add(step.key)
            push = next((limit for limit in helped if limit.name == "quill-push"), None)
            asked = (
                f"the hand would need {push.demand:.0f} N"
                if push is not None
                else f"{helped[0].title.lower()} {helped[0].shown}"
            )
            message = f"{length(step.diameter, view.job.units)} from the solid, {asked}: drill a pilot of {length(size, view.job.units)} first"
            fixes = pilot_first(view.job, step.operation, setting)
            yield remark(
                view, "pilot-for-a-large-drill", message, step.key, set_up=step.set_up,
                fix=next(iter(fixes), None), others=fixes[1:], by_hand=BY_HAND,
            )  # fmt: skip


def _pilot(view: View, step: HoleStep) -> tuple[float, tuple[Limit, ...]]:
    """The smallest pilot [m] that helps and what it eases; where none helps much, the largest that is usual."""
    setting, size = view.reckoned.settings[step.key], 0.0
    for size, _ in sizes(view.job, step.diameter):
        helped = eased(step.operation, setting, size)
        if helped:
            return size, helped
    return size, eased(step.operation, setting, size, enough=False) if size else ()
