"""Asks whether a place is measured that is closer than a dial sets it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import as_asked, called
from jobsheet.review.plan.asked_limits import measures_all
from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule


@rule("close-place-is-measured", "A close place is measured", "scrap")
def close_place_is_measured(view: View) -> Iterator[Remark]:
    """The drawing wants holes nearer to their places than spot and drill hold them, and no step measures where they are.

    A step measures it that asks `place` of what it measures, no wider than the drawing, or that measures without saying what.

    Because: Dial, spindle and drill each add their share, and a hole that is out is seen when the part does not go on its pins.
    Not so: 2 x 8 H7 within 0.03, bored, reamed and gauged
    So: the same, and place 0.03 under Measure of the reamer
    From: common practice. How close a spot and a drill hold a place is the workshop's number
    """
    asked = as_asked(view)
    if asked is None:
        return
    limit = view.reckoned.shop.close_place
    for line, feature in asked.part.features:
        if feature.within is None or feature.within >= limit * (1 - 1e-9):
            continue
        found = [hole_found for hole_found in asked.found.holes if hole_found.line == line]
        steps = [
            step
            for step in asked.steps(tuple(key for hole_found in found for key in hole_found.steps))
            if step.cuts
        ]
        if not steps or any(hole_found.state == "missing" for hole_found in found):
            continue
        if any(_measures(step, feature.within, steps) for step in asked.plan.steps):
            continue
        last = steps[-1]
        yield remark(
            view, "close-place-is-measured",
            f"Nothing measures the place of {called(line, feature)}, ±{fine(feature.within, view.job.units)}: measure from the datums before you unclamp",
            last.key, set_up=last.set_up.key, line=line,
            by_hand="write place and how far it may be out under Measure, or put in a step at the bench that measures",
        )  # fmt: skip


def _measures(step: Step, within: float, makers: list[Step]) -> bool:
    """Whether a step measures places as closely: one that makes the hole, or any that comes after."""
    if step not in makers and step.index < makers[-1].index:
        return False
    asks = getattr(getattr(step.fields, "measure", None), "asks", ())
    return measures_all(step) or any(name == "place" and value <= within + 1e-9 for name, value, _ in asks)
