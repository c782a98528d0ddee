"""Asks whether deburring comes last."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.fixes import added_after, moved_after
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.words import said
from jobsheet.review.rule import View, remark, rule

#: What is done to a hole without a burr that is left for a file.
_CLEAN = ("ream", "tap", "countersink")


@rule("deburr-after-last-cut", "Deburr after the last cut", "rework")
def deburr_after_last_cut(view: View) -> Iterator[Remark]:
    """The job has a deburring step, and the last cut comes after the last one of them.

    Quiet where all edges are chamfered later, and where only a reamer or tap comes after it.

    Because: Nobody goes back to an edge that is ticked off.
    Not so: face, deburr, drill
    So: face, drill, deburr
    From: common practice
    """
    plan = plan_of(view)
    deburrs = [step for step in plan.steps if _deburrs(step)]
    if not deburrs:
        return
    step = deburrs[-1]
    behind = [one for one in plan.steps[step.index + 1 :] if one.cuts]
    while behind and (behind[-1].roles.mills == "edge" or behind[-1].roles.hole in _CLEAN):
        if behind[-1].roles.mills == "edge":
            return
        behind.pop()
    if not behind:
        return
    last = [one for one in plan.steps if one.cuts][-1]
    message = f"Deburr after the last cut: step {last.number} cuts after step {step.number} has deburred"
    if _only_that(step):
        fix = Fix(f"Move {step.number} behind {last.number}", moved_after(step.key, last.key))
    else:
        texts = {"what": "Deburr", "with_what": "file", "minutes": "5 min"}
        fix = Fix(f"Deburr behind {last.number}", added_after(last.key, written.BENCH, texts))
    yield remark(view, "deburr-after-last-cut", message, step.key, last.key, fix=fix, set_up=step.set_up.key)


def _deburrs(step: Step) -> bool:
    if step.roles.beside != "bench":
        return False
    words = step.fields.what
    return said(words, "deburr", "burr", "deburred") or (
        said(words, "break", "broken") and said(words, "edge", "corner")
    )


def _only_that(step: Step) -> bool:
    """Whether the step does nothing else, nor stands before every cut, where it is about sawn ends."""
    words = step.fields.what.casefold().strip()
    return (
        words.startswith(("deburr", "break")) and len(words.split()) <= 3 and not said(words, "sawn", "end")
    )
