"""Asks whether a close face has a finishing pass."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.split_cut import split_off, where_it_belongs
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.lengths import rounded
from jobsheet.review.plan.rough_and_finish import LEFT, finishes, last_pass
from jobsheet.review.rule import View, remark, rule


@rule("leave-a-finishing-pass", "Leave a finishing pass", "rework")
def leave_a_finishing_pass(view: View) -> Iterator[Remark]:
    """A face or wall with close limits is made by its roughing pass alone.

    Quiet where a finishing pass is planned, and where the pass itself takes no more than one would.

    Because: Cutter and part spring; a light even cut removes most of it.
    Not so: 3 off at once, 40 ±0.03
    So: 2.8 off, then 0.2, 40 ±0.03
    From: Korea Science, paper JAKO200411922346771, finishing allowance of end milling
    """
    shop = view.reckoned.shop
    plan = plan_of(view)
    for step in plan.steps:
        if not finishes(step, shop.close_limits):
            continue
        last = last_pass(plan, step)
        if last is None or last.rough is not None or last.thick <= shop.most_finish + 1e-9:
            continue
        message = f"Leave an allowance and take a separate finishing pass: {step.fields.measure.said} comes straight from the roughing cut"
        later = plan.made_later(step)
        mend = split_off(step, view.job.units) if later is None else None
        fix = (
            Fix(f"Leave {rounded(LEFT, view.job.units)} of step {step.number} for a last pass", mend)
            if mend
            else None
        )
        yield remark(
            view, "leave-a-finishing-pass", message, step.key, fix=fix, set_up=step.set_up.key, by_hand=where_it_belongs(later)
        )  # fmt: skip
