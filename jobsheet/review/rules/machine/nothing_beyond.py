"""Asks whether anything is beyond what machine, cutter or holding gives."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.best_here import best_here, no_cut_goes
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.mending.pilot_first import pilot_first
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.rule import Needs, View, remark, rule

#: Limits that a rule of their own speaks of.
_ELSEWHERE = ("hand-pace", "travel", "marked-speed", "cutting-speed", "reverse")


@rule("nothing-beyond", "Nothing beyond", "rework", needs=Needs.FIGURES)
def nothing_beyond(view: View) -> Iterator[Remark]:
    """The verdict of a limit is beyond; where it is the holding, it is a hazard.

    Quiet where it is tight, which is printed beside the step, and where nothing is known.

    Because: What is beyond gives out before the cut is done.
    Not so: 2.5 deep where the frame rang at 7.5 N/µm and this asks 9.9
    So: 1.6 deep
    From: common practice
    """
    for step in plan_of(view).steps:
        beyond = [
            limit
            for limit in step.outcome.limits
            if limit.verdict == "beyond" and limit.name not in _ELSEWHERE
        ]
        if any(limit.name == "headroom" for limit in beyond) and step.lie.size[2] > max(step.lie.size[:2]):
            beyond = [limit for limit in beyond if limit.name != "headroom"]  # lay-tall-work-flat speaks
        if not beyond:
            continue
        worst = max(beyond, key=lambda limit: (limit.name == "holding", limit.share))
        found = remark(
            view, "nothing-beyond", f"{worst.title} is beyond here: {worst.shown}", step.key, set_up=step.set_up.key,
            fix=best_here(step.operation, step.setting), others=(*_pilot(view, step), *_any_speed(step)), by_hand=no_cut_goes(step.operation, step.setting),
        )  # fmt: skip
        if worst.sentence:
            found = replace(found, why=f"{worst.sentence[:1].upper()}{worst.sentence[1:]}.")
        yield replace(found, severity="hazard") if worst.name == "holding" else found


def _pilot(view: View, step: Step) -> tuple[Fix, ...]:
    """A pilot, where a drill from the solid is no good at any speed or feed."""
    if (
        step.roles.hole != "drill"
        or step.roles.opens
        or step.setting.pilot
        or step.fields.cutter.kind != "drill"
    ):
        return ()
    return pilot_first(view.job, step.operation, step.setting)


def _any_speed(step: Step) -> tuple[Fix, ...]:
    """The speed left to the program, where it is one that this machine does not have."""
    missing = any(limit.name == "speed-range" and limit.verdict == "beyond" for limit in step.outcome.limits)
    if not missing or getattr(step.fields, "spindle", None) is None:
        return ()
    return (Fix("Take the nearest speed of this machine", set_field(step.key, "spindle", "")),)
