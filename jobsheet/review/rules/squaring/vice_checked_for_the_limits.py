"""Asks whether the vice is truer than what is asked of the work."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.machine.card_words import vice_error
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.plan.faces import in_vice, plan_of
from jobsheet.review.plan.held import does
from jobsheet.review.plan.lengths import finest, length
from jobsheet.review.rule import View, remark, rule


@rule("vice-checked-for-the-limits", "Vice checked for the limits", "scrap")
def vice_checked_for_the_limits(view: View) -> Iterator[Remark]:
    """A limit on squareness or parallelism is closer than the error of the vice on the card, over that length.

    Quiet where the card notes no error, and where a check of the vice is a step of this job.

    Because: An error of the jaw makes a parallelogram, one of the bed a wedge.
    Not so: parallel within 0.01 over 150 in a vice that is 0.02 out over 150
    So: the vice checked and shimmed first
    From: common practice
    """
    plan = plan_of(view)
    for step in plan.steps:
        asked = getattr(step.fields, "tolerances", None)
        limits = [one for one in (getattr(asked, "square", None), getattr(asked, "parallel", None)) if one]
        if not limits or not in_vice(step.set_up, step.lie):
            continue
        known = vice_error(step.setting.machine)
        if known is None or any(does(other.operation, "check vice") for other in plan.steps[: step.index]):
            continue
        along = max(step.lie.size[:2])
        error = known[0] * along / known[1]
        if error <= min(limits) + 1e-9:
            continue
        message = (
            f"The vice's own error, {finest(error, view.job.units, 3)} over {length(along, view.job.units)}, is larger than the limit of"
            f" {finest(min(limits), view.job.units, 3)}: check and shim it first"
        )
        first = plan.of(step.set_up.key)[0]
        texts = {
            "does": "check vice",
            "with_what": "indicator, shims",
            "minutes": "10 min",
        }
        fix = Fix("Add a check of the vice", added_before(first.key, written.BENCH, texts))
        yield remark(view, "vice-checked-for-the-limits", message, step.key, fix=fix, set_up=step.set_up.key)
