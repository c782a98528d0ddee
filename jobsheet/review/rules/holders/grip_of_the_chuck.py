"""Asks whether a chuck grips enough of the work."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.chucked import chucked
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: Of what stands out so much should be gripped where no tailstock holds the end (common practice, no source).
LEAST = 1 / 4


@rule("grip-of-the-chuck", "Grip of the chuck", "hazard")
def grip_of_the_chuck(view: View) -> Iterator[Remark]:
    """A chuck grips less than a quarter of what stands out of it, and no tailstock holds the end.

    Because: The cut levers the work out of jaws that hold so little of it.
    Not so: 60 out of the jaws, gripped over 8
    So: 60 out of the jaws, gripped over 25
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        found = chucked(set_up, steps[0])
        if found is None or found.grip is None or found.out is None or found.tailstock:
            continue
        grip, out = found.grip, found.out
        if grip >= LEAST * out - 1e-9 or not any(step.cuts for step in steps):
            continue
        units = view.job.units
        message = f"Gripped over {length(grip, units)}, and {length(out, units)} stands out: grip a quarter of that at least, or set the tailstock"
        yield remark(
            view, "grip-of-the-chuck", message, steps[0].key, set_up=set_up.key,
            by_hand="push the work further in, or hold its end with the tailstock, and enter it",
        )  # fmt: skip
