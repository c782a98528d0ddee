"""Asks what keeps work between centres from turning."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact, holding_roles
from jobsheet.review.rule import View, remark, rule


@rule("dog-between-centres", "Dog between centres", "hazard")
def dog_between_centres(view: View) -> Iterator[Remark]:
    """Work between centres is cut, and no dog without play drives it, or nobody says so.

    Because: Points hold nothing against turning: the cut spins the work.
    Not so: between centres, no dog
    So: between centres, a dog without play in its driver
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        first = next((step for step in steps if step.cuts), None)
        if first is None or not holding_roles(set_up).between or fact(set_up, "dog"):
            continue
        message = (
            "Nothing keeps it from turning between the centres: a dog without play"
            if fact(set_up, "dog") is False
            else "Does a dog without play drive it? Nothing else keeps it from turning between the centres"
        )
        fix = Fix("A dog without play", set_field(f"holding:{set_up.key}", "dog", "yes"))
        yield remark(view, "dog-between-centres", message, first.key, fix=fix, set_up=set_up.key)
