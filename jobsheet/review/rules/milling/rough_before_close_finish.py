"""Asks whether heavy cuts come before the close ones of a set-up."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import moved_after
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.rough_and_finish import close, finishes
from jobsheet.review.rule import Needs, View, remark, rule

#: So many times the chips of the finishing pass make a roughing cut (sequencing rules, the row of this rule).
TIMES = 10


@rule("rough-before-close-finish", "Rough before a close finish", "scrap", needs=Needs.FIGURES)
def rough_before_close_finish(view: View) -> Iterator[Remark]:
    """Inside one set-up a pass with very close limits comes before roughing of more than ten times its chips.

    Quiet where the rougher cut is in another set-up, and with wider limits.

    Because: Roughing warms the part, moves stresses and can shift it.
    Not so: finish the top to 20 ±0.01, then rough the step
    So: rough the step, then finish the top
    From: common practice
    """
    very = view.reckoned.shop.very_close_limits
    for set_up, steps in plan_of(view).groups():
        for index, step in enumerate(steps):
            if not finishes(step, very):
                continue
            own = step.figure("volume") or 0.0
            rough = [
                step
                for step in steps[index + 1 :]
                if step.roles.sizes
                and not close(step, very)
                and (step.figure("volume") or 0.0) > TIMES * own > 0
            ]
            if rough:
                last = rough[-1]
                message = f"Rough first, then this finishing pass: step {last.number} takes over ten times its chips"
                fix = Fix(f"Move {step.number} behind {last.number}", moved_after(step.key, last.key))
                yield remark(
                    view, "rough-before-close-finish", message, step.key, last.key, fix=fix, set_up=set_up.key
                )
