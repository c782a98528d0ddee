"""Asks whether too much of the work hangs over the ends of the jaws."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import SetUp
from jobsheet.model.remark import Remark
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import fact, size
from jobsheet.review.plan.jaws import sits
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: Over this share of what the jaws hold it bends and rings (holding-and-more-kinds
#: A2: warn past half, common practice).
SHARE = 0.5


@rule("overhang-past-the-jaws", "What hangs over the jaws", "scrap")
def overhang_past_the_jaws(view: View) -> Iterator[Remark]:
    """At one end of jaws, angle plate or vee blocks more hangs over than half of what they hold, and nothing stands under it.

    Quiet for a stub that hangs over less than it is high: it does not bend.

    Because: It gives way under the cutter with the cube of its length, and rings.
    Not so: a flat 120 long, 60 of it over the jaws
    So: the same flat with 30 over the jaws, or a jack under its end
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        if fact(set_up, "supported_by") is not None or not any(step.cuts for step in steps):
            continue
        hangs = _hangs(set_up, steps[0])
        if hangs is None:
            continue
        most, held, what = hangs
        if most <= max(SHARE * held, steps[0].lie.size[2]) + 1e-9:
            continue
        units = view.job.units
        message = f"{length(most, units)} hangs over the {what}, and {length(held, units)} is held: up to half of that goes without a jack under it"
        yield remark(
            view, "overhang-past-the-jaws", message, steps[0].key, set_up=set_up.key,
            by_hand="hold it further in, take a wider vice, or set a jack under the end and enter it",
        )  # fmt: skip


def _hangs(set_up: SetUp, first: Step) -> tuple[float, float, str] | None:
    """How much hangs over at the worse end, how much is held [m], and over what; None where nothing is known of it."""
    found = sits(set_up, first)
    if found is not None:
        return max(found.least), found.held, "jaws"
    left, right = size(set_up, "over_left"), size(set_up, "over_right")
    if left is None and right is None:
        return None
    over = (left or 0.0, right or 0.0)
    return max(over), max(first.lie.size[0] - sum(over), 0.0), set_up.holding.kind
