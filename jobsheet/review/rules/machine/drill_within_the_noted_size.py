"""Asks whether a drill is larger than the machine's noted one."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.machine.card_words import largest_drill
from jobsheet.model.remark import Remark
from jobsheet.review.mending.pilot_first import pilot_first
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import Needs, View, remark, rule


@rule("drill-within-the-noted-size", "Drill within the noted size", "rework", needs=Needs.FIGURES)
def drill_within_the_noted_size(view: View) -> Iterator[Remark]:
    """A drill goes into solid steel that is larger than the largest noted on the card.

    Quiet where it is piloted, and where as much was cut before.

    Because: One owner strips the same plastic gear with 25 mm drills every few years: the drive gives up before the motor.
    Not so: 13 mm from solid on a machine whose card notes 10
    So: a pilot first
    From: common practice
    """
    for step in plan_of(view).steps:
        if (
            step.roles.hole != "drill"
            or step.roles.opens
            or step.fields.cutter.kind not in ("drill", "core drill")
        ):
            continue
        diameter = step.fields.cutter.diameter
        noted = largest_drill(step.setting.machine)
        if not diameter or noted is None or step.setting.material.family not in ("steel", "stainless"):
            continue
        if step.setting.pilot or diameter <= noted + 1e-9:
            continue
        if step.outcome.governing is not None and step.outcome.governing.verdict == "cut before":
            continue
        message = f"Larger than this machine's noted drill, {length(noted, view.job.units)}: mind the drive, not only the motor"
        fixes = pilot_first(view.job, step.operation, step.setting, "Pilot")
        yield remark(
            view, "drill-within-the-noted-size", message, step.key, set_up=step.set_up.key,
            fix=next(iter(fixes), None), others=fixes[1:],
        )  # fmt: skip
