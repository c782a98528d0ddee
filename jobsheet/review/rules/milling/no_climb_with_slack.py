"""Asks whether a cut runs with the rotation."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.machine import Machine
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: Backlash and pass of a light finish with the rotation [m] (sequencing rules, section 5).
SLACK, PASS = 0.05e-3, 0.2e-3


@rule("no-climb-with-slack", "No cutting with the rotation", "hazard")
def no_climb_with_slack(view: View) -> Iterator[Remark]:
    """The cut runs with the rotation of the cutter.

    Where the workshop chose “light finish”, it is quiet for a pass of 0.2 mm or less on a machine whose backlash is measured and 0.05 mm at
    most, and whose gib locks are nipped up.

    Because: The force runs with the feed, takes up the backlash in one jerk and snatches cutter or work.
    Not so: way climb on a screw with 0.2 mm of backlash
    So: way conventional
    From: common practice
    """
    for step in plan_of(view).steps:
        if getattr(step.fields, "way", "") != "climb":
            continue
        why = _against(step, view.job.units)
        if not why:
            continue
        fix = Fix("Cut the conventional way", set_field(step.key, "way", "conventional"))
        message = f"Feed against the rotation here: {why}"
        yield remark(view, "no-climb-with-slack", message, step.key, fix=fix, set_up=step.set_up.key)


def _against(step: Step, units: str) -> str:
    """What speaks against it; nothing where a light finish is agreed and all is in order."""
    setting = step.setting
    if setting.shop.climb_milling != "light finish":
        return "this workshop never cuts with the rotation"
    backlash = _slack(setting.machine, getattr(step.fields, "along", "x"))
    if backlash is None:
        return "the card does not know the backlash of this screw"
    if backlash > SLACK + 1e-9:
        return f"the screw has {length(backlash, units)} of backlash"
    if setting.machine.drag is None:
        return "no drag of the slide is entered on the card"
    width = step.figure("width_of_cut")
    if width is None or width > PASS + 1e-9:
        return f"only a light finish of {length(PASS, units)} may run with it"
    return ""


def _slack(machine: Machine, axis: str) -> float | None:
    handle = machine.handle(axis)
    return handle.backlash if handle is not None else None
