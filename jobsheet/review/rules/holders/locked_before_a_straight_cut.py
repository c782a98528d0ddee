"""Asks whether a dividing head or rotary table is locked while it cuts."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact, holding_roles
from jobsheet.review.rule import View, remark, rule


@rule("locked-before-a-straight-cut", "Locked before a straight cut", "hazard")
def locked_before_a_straight_cut(view: View) -> Iterator[Remark]:
    """Work on a dividing head, rotary table or between centres is cut, and the spindle is not locked, or nobody says so.

    Because: The cut turns the work by the play of its worm, and the cutter digs in.
    Not so: turn by 60 degrees, cut
    So: turn by 60 degrees, lock, cut
    From: United States Army Ordnance, course OD1644; common practice
    """
    for set_up, steps in plan_of(view).groups():
        first = next((step for step in steps if step.cuts), None)
        if first is None or not holding_roles(set_up).turns or fact(set_up, "locked"):
            continue
        message = (
            "The spindle is not locked here: lock it before each cut"
            if fact(set_up, "locked") is False
            else "Is the spindle locked before each cut? Nothing says so"
        )
        fix = Fix("Locked before each cut", set_field(f"holding:{set_up.key}", "locked", "yes"))
        yield remark(view, "locked-before-a-straight-cut", message, first.key, fix=fix, set_up=set_up.key)
