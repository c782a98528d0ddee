"""Asks whether one strap alone keeps the work from turning."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import changed_before, fact, on_straps, stopped
from jobsheet.review.rule import View, remark, rule


@rule("more-than-one-strap", "More than one strap", "hazard")
def more_than_one_strap(view: View) -> Iterator[Remark]:
    """One strap alone holds the work while it is milled, or while it is drilled with no stop beside it, or work in two vee blocks.

    Because: The work turns about the one bolt as about a pin.
    Not so: one strap in the middle, a side milled
    So: two straps, as far apart as they go
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        places, clamps = fact(set_up, "at"), fact(set_up, "clamps")
        many = len(places) if places is not None else clamps
        over_blocks = (fact(set_up, "blocks") or 1) > 1
        if not (on_straps(set_up) or over_blocks) or many != 1:
            continue
        held_off = stopped(set_up)
        first = next((step for step in steps if step.cuts and (step.roles.mills or not held_off)), None)
        if first is None or changed_before(set_up, first.key).on:
            continue
        message = (
            "One strap over two blocks: the other end lifts and turns; a strap over each"
            if over_blocks
            else "One strap alone: the work turns about its bolt; two straps, or stops beside it for a drill"
        )
        yield remark(
            view, "more-than-one-strap", message, first.key, set_up=set_up.key, by_hand="set a second strap, and enter where both press",
        )  # fmt: skip
