"""Asks whether what a chuck grips and what stands out of it are no more than the work is long."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.chucked import chucked
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import size
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule


@rule("length-in-the-chuck-adds-up", "Length in the chuck adds up", "hazard")
def length_in_the_chuck_adds_up(view: View) -> Iterator[Remark]:
    """What a chuck grips and what stands out of it come to more than the work is long.

    Because: One of the two is not so: less is gripped than planned, or the cut comes to the jaws.
    Not so: a bar of 70, gripped over 40, 45 out
    So: a bar of 70, gripped over 40, 30 out
    From: plain geometry
    """
    for set_up, steps in plan_of(view).groups():
        found = chucked(set_up, steps[0])
        out = size(set_up, "out")
        if found is None or found.grip is None or out is None or found.grip + out <= found.length + 1e-6:
            continue
        units = view.job.units
        message = (
            f"Gripped over {length(found.grip, units)} with {length(out, units)} out comes to {length(found.grip + out, units)}, and the"
            f" work is {length(found.length, units)} {'high' if found.upright else 'long'}: measure it again"
        )
        yield remark(
            view, "length-in-the-chuck-adds-up", message, steps[0].key, set_up=set_up.key,
            by_hand="enter what is gripped and what stands out as they are",
        )  # fmt: skip
