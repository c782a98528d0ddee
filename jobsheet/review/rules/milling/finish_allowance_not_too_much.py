"""Asks whether a finishing pass has too much to cut."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.mending.split_cut import split_off, where_it_belongs
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.lengths import length, rounded
from jobsheet.review.plan.rough_and_finish import LEFT, finishes, last_pass
from jobsheet.review.rule import View, remark, rule


@rule("finish-allowance-not-too-much", "Finishing allowance not too much", "rework")
def finish_allowance_not_too_much(view: View) -> Iterator[Remark]:
    """The limits are close, and the finishing pass is thicker than six tenths of a millimetre.

    Quiet with wider limits.

    Because: A heavy last cut springs the cutter and moves the size.
    Not so: rough, then 1.5 off to 40 ±0.03
    So: rough, 1.2 off, then 0.3 off to 40 ±0.03
    From: common practice
    """
    shop = view.reckoned.shop
    plan = plan_of(view)
    for step in plan.steps:
        last = last_pass(plan, step)
        if last is None or last.rough is None or last.thick <= shop.most_finish + 1e-9:
            continue
        if not finishes(step, shop.close_limits):
            continue
        message = f"Much left to cut: the last pass of {step.fields.measure.said} takes {length(last.thick, view.job.units)}; add a pass between"
        units = view.job.units
        later = plan.made_later(step)
        mend = (
            set_field(step.key, "leave", rounded(LEFT, units))
            if last.rough is step
            else split_off(step, units)
        )
        mend = mend if later is None else None
        fix = Fix(f"Leave {rounded(LEFT, units)} for the last pass", mend) if mend else None
        yield remark(
            view, "finish-allowance-not-too-much", message, step.key, fix=fix, set_up=step.set_up.key,
            by_hand=where_it_belongs(later),
        )  # fmt: skip
