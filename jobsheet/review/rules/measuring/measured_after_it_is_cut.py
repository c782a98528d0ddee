"""Asks whether a size is measured once it is there."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import moved_after
from jobsheet.review.plan.as_asked import as_asked
from jobsheet.review.plan.asked_limits import SAME, asked_sizes, size_of
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.gauges import measures
from jobsheet.review.rule import View, remark, rule


@rule("measured-after-it-is-cut", "Measured after it is cut", "scrap")
def measured_after_it_is_cut(view: View) -> Iterator[Remark]:
    """A step measures a size of the drawing before the first step that cuts it, and none measures it behind that.

    Because: Where nothing is cut yet there is nothing to measure, and behind the cut nobody looks.
    Not so: measure the slot 4 ±0.1 deep, mill the slot
    So: mill the slot, measure 4 ±0.1
    From: common practice
    """
    asked = as_asked(view)
    if asked is None:
        return
    sizes = tuple(asked_sizes(asked))
    steps = plan_of(view).steps
    for step in steps:
        size = size_of(step)
        if size is None or step.cuts or not measures(step):
            continue
        same = [
            steps_of
            for asked_size, steps_of in sizes
            if abs(asked_size.nominal - size.nominal) < SAME and steps_of
        ]
        if not same or any(made[0].index < step.index for made in same):
            continue
        maker = min((made[-1] for made in same), key=lambda step: step.index)
        later = (step for step in steps if step.index >= maker.index and size_of(step) is not None)
        if any(abs(size_of(step).nominal - size.nominal) < SAME for step in later):
            continue
        message = f"Measure {size.said} after step {maker.number}, which cuts it: here it is not there yet"
        yield remark(
            view, "measured-after-it-is-cut", message, step.key, set_up=step.set_up.key,
            fix=Fix(f"Move {step.number} behind {maker.number}", moved_after(step.key, maker.key)),
        )  # fmt: skip
