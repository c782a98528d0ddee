"""Asks whether too much of the work hangs over the ends of the jaws."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import supported
from jobsheet.review.plan.jaws import sits
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: Over this share of what the jaws hold it bends and rings (holding-and-more-kinds A2: warn past half, common practice).
SHARE = 0.5


@rule("overhang-past-the-jaws", "What hangs over the jaws", "scrap")
def overhang_past_the_jaws(view: View) -> Iterator[Remark]:
    """At one end of the jaws more hangs over than half of what they hold, and nothing stands under it.

    Quiet for a stub that hangs over less than it is high: it does not bend.

    Because: It gives way under the cutter with the cube of its length, and rings.
    Not so: a flat 120 long, 60 of it over the jaws
    So: the same flat with 30 over the jaws, or a jack under its end
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        found = sits(set_up, steps[0])
        if found is None or supported(set_up) or not any(step.cuts for step in steps):
            continue
        most = max(found.least)
        if most <= max(SHARE * found.held, steps[0].lie.size[2]) + 1e-9:
            continue
        units = view.job.units
        message = f"{length(most, units)} hangs over the jaws and they hold {length(found.held, units)}: up to half of that goes without a jack under it"
        yield remark(
            view, "overhang-past-the-jaws", message, steps[0].key, set_up=set_up.key,
            by_hand="hold it further in, take a wider vice, or set a jack under the end and enter it",
        )  # fmt: skip
