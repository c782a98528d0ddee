"""Asks how far work on an angle plate stands over it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact, holding_roles, size
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule


@rule("height-over-the-plate", "Height over the angle plate", "hazard")
def height_over_the_plate(view: View) -> Iterator[Remark]:
    """The work stands more over the angle plate than twice what lies on it. The number is the workshop's, as of jaws.

    Quiet where something else supports it.

    Because: Cutter and drill lever it over the edge of the plate.
    Not so: 72 of 90 over the plate
    So: 22 of 90 over the plate
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        over = size(set_up, "above_plate")
        first = next((step for step in steps if step.cuts), None)
        if not holding_roles(set_up).upright or over is None or first is None or fact(set_up, "supported_by"):
            continue
        high = steps[0].lie.size[2]
        if over <= view.reckoned.shop.stands_above * max(high - over, 0.0) * (1 + 1e-6):
            continue
        units = view.job.units
        message = f"{length(over, units)} of {length(high, units)} stands over the plate: set it lower, or take a higher plate"
        yield remark(
            view, "height-over-the-plate", message, first.key, set_up=set_up.key, by_hand="set it lower on the plate, or take a higher one",
        )  # fmt: skip
