"""Asks whether work on a slope stands against a stop."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact, holding_roles
from jobsheet.review.rule import View, remark, rule


@rule("stop-at-the-low-end", "Stop at the low end", "hazard")
def stop_at_the_low_end(view: View) -> Iterator[Remark]:
    """Work on a sine plate is cut, and no stop is at its low end, or nobody says so.

    Because: Work on a slope slides down it under the cut.
    Not so: a sine plate at 12.5 degrees, clamps alone
    So: a sine plate at 12.5 degrees, its low end against a stop
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        first = next((step for step in steps if step.cuts), None)
        stop = fact(set_up, "stop")
        if first is None or not holding_roles(set_up).leans or stop == "low end":
            continue
        message = (
            "No stop at the low end: the work slides down the slope under the cut"
            if stop == "none"
            else "Is there a stop at the low end? On a slope the work slides down under the cut"
        )
        fix = Fix("A stop at the low end", set_field(f"holding:{set_up.key}", "stop", "low end"))
        yield remark(view, "stop-at-the-low-end", message, first.key, fix=fix, set_up=set_up.key)
