"""Asks whether a cut meets metal."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import taken_out
from jobsheet.review.plan.stage_facts import step_of
from jobsheet.review.rule import Needs, View, remark, rule


@rule("cuts-only-air", "A cut that meets metal", "rework", needs=Needs.STAGES)
def cuts_only_air(view: View) -> Iterator[Remark]:
    """A step that cuts, and takes nothing: the metal there has gone before, or the place, zero or depth is wrong.

    Because: Either the step is not needed, or it is not where it was meant to be.
    Not so: mill a slot where a pocket was milled before
    So: leave the step out, or put it where the metal is
    From: the solids of the plan
    """
    for fact in view.facts_of("cuts-air"):
        found = step_of(view, fact.key)
        if found is None:
            continue
        set_up, operation = found
        message = "This step takes no metal: it was cut before, or place, zero or depth is not what was meant"
        yield remark(
            view, "cuts-only-air", message, operation.key, set_up=set_up.key,
            fix=Fix(f"Take out step {operation.number}", taken_out(operation.key)),
        )  # fmt: skip
