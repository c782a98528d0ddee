"""Asks whether a face is marked before it is cut again."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import moved_after
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import does
from jobsheet.review.rule import View, remark, rule


@rule("mark-after-the-last-cut", "Mark after the last cut", "rework")
def mark_after_the_last_cut(view: View) -> Iterator[Remark]:
    """Stamping, engraving or marking a face comes before a later cut on that face.

    The face is the one that is up; marking out for a cut is not meant.

    Because: The mark is cut away or raises a burr.
    Not so: stamp the number, then face the top
    So: face the top, then stamp the number
    From: common practice
    """
    plan = plan_of(view)
    for step in plan.steps:
        if not does(step.operation, "mark"):
            continue
        later = [
            other
            for other in plan.steps[step.index + 1 :]
            if step.lie.up in other.makes
            or (other.set_up.key == step.set_up.key and other.cuts and other.lie.up in other.makes)
        ]
        if not later:
            continue
        last = later[-1]
        message = (
            f"Mark after the last cut on this face: step {last.number} cuts {plan.named(step.lie.up)} again"
        )
        fix = Fix(f"Move {step.number} behind {last.number}", moved_after(step.key, last.key))
        yield remark(
            view, "mark-after-the-last-cut", message, step.key, last.key, fix=fix, set_up=step.set_up.key
        )
