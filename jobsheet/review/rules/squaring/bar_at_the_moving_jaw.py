"""Asks whether a round bar lets the work lie flat on the fixed jaw."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import MACHINED, Step, in_vice, plan_of, width_of_limits
from jobsheet.review.plan.held import fact
from jobsheet.review.rule import View, remark, rule


@rule("bar-at-the-moving-jaw", "Round bar at the moving jaw", "scrap")
def bar_at_the_moving_jaw(view: View) -> Iterator[Remark]:
    """A face is cut by a true one on the fixed jaw, or has limits, while the moving jaw meets a raw face and nothing evens that out.

    Quiet where both faces in the jaws are machined or as bought, and with a swivel base, soft or vee jaws.

    Because: A line contact lets the work lie flat on the fixed jaw and keeps the jaw from lifting it.
    Not so: machined face to the fixed jaw, sawn face bare at the moving jaw
    So: the same with a round bar at the moving jaw
    From: Virtual Machine Shop, course unit on squaring a block; Goodheart-Willcox, Modern Metalworking, 2018,
    page 484
    """
    plan = plan_of(view)
    for set_up, steps in plan.groups():
        first = steps[0]
        evened = fact(set_up, "bar") or fact(set_up, "jaws") in ("soft", "vee")
        if not in_vice(set_up, first.lie) or evened or fact(set_up, "base") == "swivel":
            continue
        moving = OPPOSITE[set_up.fixed_jaw]
        if not plan.untrue(moving, first.index):
            continue
        true = plan.state(set_up.fixed_jaw, first.index) == MACHINED
        asking = next((step for step in steps if step.makes and (true or _asks(step))), None)
        if asking is None:
            continue
        message = (
            f"Round bar between the work and the moving jaw: {plan.named(moving)} is still raw there, and step {asking.number}"
            + (" has limits" if _asks(asking) else f" goes by {plan.named(set_up.fixed_jaw)}, which is true")
        )
        fix = Fix("Enter a round bar", set_field(f"holding:{set_up.key}", "bar", "yes"))
        yield remark(view, "bar-at-the-moving-jaw", message, asking.key, fix=fix, set_up=set_up.key)


def _asks(step: Step) -> bool:
    asked = getattr(step.fields, "tolerances", None)
    square = asked is not None and (asked.square is not None or asked.parallel is not None)
    return square or width_of_limits(step) is not None
