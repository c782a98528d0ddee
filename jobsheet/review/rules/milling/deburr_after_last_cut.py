"""Asks whether deburring comes last."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.operations.manners import BROKEN
from jobsheet.review.mending.fixes import added_after, moved_after
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import does, how
from jobsheet.review.rule import View, remark, rule

#: What is done to a hole without a burr that is left for a file.
_CLEAN = ("ream", "tap", "countersink")


@rule("deburr-after-last-cut", "Deburr after the last cut", "rework")
def deburr_after_last_cut(view: View) -> Iterator[Remark]:
    """The job has a deburring step, and the last cut comes after the last one of them.

    Quiet where all edges are chamfered later, and where only a reamer or tap comes after it, or cuts that break their own edges.

    Because: Nobody goes back to an edge that is ticked off.
    Not so: face, deburr, drill
    So: face, drill, deburr
    From: common practice
    """
    plan = plan_of(view)
    deburrs = [step for step in plan.steps if does(step.operation, "deburr")]
    if not deburrs:
        return
    step = deburrs[-1]
    behind = [other for other in plan.steps[step.index + 1 :] if other.cuts]
    while behind and (behind[-1].roles.mills == "edge" or _leaves_none(behind[-1])):
        if behind[-1].roles.mills == "edge":
            return
        behind.pop()
    if all(_leaves_none(step) for step in behind):
        return
    last = [step for step in plan.steps if step.cuts][-1]
    message = f"Deburr after the last cut: step {last.number} cuts after step {step.number} has deburred"
    if _only_that(step, first=step.index == 0):
        fix = Fix(f"Move {step.number} behind {last.number}", moved_after(step.key, last.key))
    else:
        texts = {"does": "deburr", "with_what": "file", "minutes": "5 min"}
        fix = Fix(f"Deburr behind {last.number}", added_after(last.key, written.BENCH, texts))
    yield remark(view, "deburr-after-last-cut", message, step.key, last.key, fix=fix, set_up=step.set_up.key)


def _leaves_none(step: Step) -> bool:
    """Whether no burr of it is left for a file."""
    return step.roles.hole in _CLEAN or how(step.operation, BROKEN)


def _only_that(step: Step, *, first: bool) -> bool:
    """Whether the step does nothing else, nor stands before every cut, where it is about sawn ends."""
    return step.roles.does == ("deburr",) and not first
