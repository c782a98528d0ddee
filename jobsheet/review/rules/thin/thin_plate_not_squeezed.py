"""Asks whether a thin plate that must be flat is squeezed in the vice."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import in_vice, plan_of
from jobsheet.review.plan.held import fact
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule


@rule("thin-plate-not-squeezed", "A thin plate is not squeezed", "scrap")
def thin_plate_not_squeezed(view: View) -> Iterator[Remark]:
    """Flatness is asked, and the plate is thinner than a tenth of the span between the jaws.

    Quiet where it is strapped down or screwed to a plate, and where something holds it up.

    Because: It springs flat while held and curves when let go.
    Not so: a plate 4 thick and 60 wide in the vice, flat within 0.05
    So: the same plate clamped down on the table
    From: common practice; from memory of shop practice. The share is the workshop's number
    """
    for set_up, steps in plan_of(view).groups():
        lie = steps[0].lie
        if not in_vice(set_up, lie):
            continue
        asking = next(
            (step for step in steps if getattr(getattr(step.fields, "tolerances", None), "flat", None)), None
        )
        if asking is None or fact(set_up, "supported_by") is not None:
            continue
        along, across, high = lie.size
        span = across if lie.side(set_up.fixed_jaw) in ("near", "far") else along
        if high >= view.reckoned.shop.thin_plate * span - 1e-9:
            continue
        message = (
            f"The vice will bow it: {length(high, view.job.units)} thick over {length(span, view.job.units)} between the jaws; clamp it"
            " down instead"
        )
        fix = Fix("Clamp it down", set_field(f"holding:{set_up.key}", "kind", "straps"))
        yield remark(view, "thin-plate-not-squeezed", message, asking.key, fix=fix, set_up=set_up.key)
