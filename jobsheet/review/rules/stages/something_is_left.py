"""Asks whether anything is left of the work."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.stage_facts import step_of
from jobsheet.review.rule import Needs, View, remark, rule


@rule("something-is-left", "Something is left of the work", "scrap", needs=Needs.STAGES)
def something_is_left(view: View) -> Iterator[Remark]:
    """A step cuts away all that is left of the stock.

    Because: A depth or a size was mistyped; what comes after has nothing to cut, and is not looked at.
    Not so: face 60 deep off stock 12 high
    So: face 6.0 deep off stock 50 high
    From: the solids of the plan
    """
    for fact in view.facts_of("nothing-left"):
        step = step_of(view, fact.key)
        if step is None:
            continue
        message = (
            "This step cuts away all that is left of the work: look at its depth and sizes, and at the stock"
        )
        yield remark(view, "something-is-left", message, fact.key, set_up=step[0].key)
