"""Asks what presses the work to its plate or into its vee."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact, holding_roles
from jobsheet.review.rule import View, remark, rule


@rule("clamps-that-press-it", "Clamps that press it", "hazard")
def clamps_that_press_it(view: View) -> Iterator[Remark]:
    """Work on an angle plate, a sine plate or vee blocks is cut, and nobody says how many clamps press it there.

    Because: Plate and vee only place the work: clamps hold it.
    Not so: round work laid into vee blocks
    So: round work in vee blocks, a strap over each
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        first = next((step for step in steps if step.cuts), None)
        if first is None or not holding_roles(set_up).clamped or fact(set_up, "clamps"):
            continue
        message = f"How many clamps press it? On the {set_up.holding.kind} nothing else holds it"
        fix = Fix("Two clamps", set_field(f"holding:{set_up.key}", "clamps", "2"))
        yield remark(view, "clamps-that-press-it", message, first.key, fix=fix, set_up=set_up.key)
