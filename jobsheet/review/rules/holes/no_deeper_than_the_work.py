"""Asks whether a depth is more than the work is high."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: Below the work a drill goes by its point, three tenths of its diameter, and so much
#: more [m] (common practice, no source).
OVER = 2e-3
#: Reamers and taps are longer in front: a whole diameter (common practice, no source).
POINT = {"drill": 0.3, "plunge": 0.0, "bore": 0.0, "spot": 0.0, "ream": 1.0, "tap": 1.0}


@rule("no-deeper-than-the-work", "No deeper than the work", "hazard")
def no_deeper_than_the_work(view: View) -> Iterator[Remark]:
    """The depth of a hole, a slot or a pocket is more than the work is high there, and more than its point needs to come out.

    Because: Below the work are parallels, jaws and table.
    Not so: drill 5, 40 deep, in a plate of 12
    So: drill 5 through
    From: common practice
    """
    for step in plan_of(view).steps:
        depth = getattr(getattr(step.fields, "depth", None), "value", None)
        needs = _needs(step)
        if depth is None or needs is None or depth <= step.lie.size[2] + needs + 1e-9:
            continue
        units = view.job.units
        message = f"{length(depth, units)} deep, and the work is {length(step.lie.size[2], units)} high here"
        yield remark(
            view, "no-deeper-than-the-work", message, step.key, set_up=step.set_up.key,
            fix=Fix("Go through", set_field(step.key, "depth", "through"), (step.key,)),
            by_hand="write through, or the depth of the drawing",
        )  # fmt: skip


def _needs(step: Step) -> float | None:
    """How far below the work it may go [m]; None where nothing is asked."""
    if step.roles.mills in ("groove", "recess"):
        return OVER
    share = POINT.get(step.roles.hole)
    if share is None or not getattr(step.fields, "cutter", None):
        return None
    return share * (step.fields.cutter.diameter or 0.0) + OVER
