"""Asks whether the face that a set-up holds on is still there."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.held import holding_roles
from jobsheet.review.plan.stage_facts import step_of
from jobsheet.review.rule import Needs, View, remark, rule


@rule("enough-left-to-hold", "Enough left to hold", "scrap", needs=Needs.STAGES)
def enough_left_to_hold(view: View) -> Iterator[Remark]:
    """More than half of the face at the fixed jaw has gone before the set-up that holds on it. Round work in vee jaws lies on no face.

    Because: The work has nothing to lie against: it leans, slips or is bruised.
    Not so: mill a wide step, then hold on the face it took
    So: do the other set-up first, or hold on another face
    From: the solids of the plan
    """
    told: set[str] = set()
    for fact in view.facts_of("lost-contact"):
        step = step_of(view, fact.key)
        if step is None or step[0].key in told or holding_roles(step[0]).round:
            continue  # round work touches vee jaws along lines, and no face of it lies against them
        told.add(step[0].key)
        message = f"Only {fact.found * 100:.0f} % of the {fact.about} is left to hold on here: hold on another face, or do this set-up earlier"
        yield remark(view, "enough-left-to-hold", message, fact.key, set_up=step[0].key)
