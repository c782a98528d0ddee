"""Asks whether a cut keeps clear of the jaws."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.plan.stage_facts import step_of
from jobsheet.review.rule import Needs, View, remark, rule

#: A cut should end so far over the jaws [m] (common practice, no source).
CLEAR = 1e-3
#: The jaws should keep so much of the work [m] (common practice, no source).
GRIP = 5e-3


@rule("keep-clear-of-the-jaws", "Clear of the jaws", "hazard", needs=Needs.STAGES)
def keep_clear_of_the_jaws(view: View) -> Iterator[Remark]:
    """A cut goes deeper at a jaw than the work stands over it.

    Because: The cutter runs into the hardened jaw: cutter, jaw and work are spoiled, and the work is torn loose.
    Not so: a step 12 deep at the fixed jaw, 6 over the jaws
    So: a step 12 deep at the fixed jaw, 15 over the jaws
    From: the solids of the plan; common practice
    """
    deepest: dict[str, float] = {}
    for fact in view.facts_of("cuts-the-jaws"):
        deepest[fact.key] = max(deepest.get(fact.key, 0.0), fact.found)
    told: set[str] = set()
    for fact in view.facts_of("cuts-the-jaws"):
        step = step_of(view, fact.key)
        if step is None or fact.key in told:
            continue
        told.add(fact.key)
        set_up, depth = step[0], deepest[fact.key]
        most = max(
            value
            for key, value in deepest.items()
            if (other := step_of(view, key)) and other[0].key == set_up.key
        )
        high = view.reckoned.settings[fact.key].extent[2]
        above = most + CLEAR
        fix = None
        if above <= high - GRIP:
            text = typed(above, view.job.units, 1)
            fix = Fix(f"{text} above the jaws", set_field(f"holding:{set_up.key}", "above_jaws", text))
        message = f"{length(depth, view.job.units)} deep at a jaw, and the work stands {length(fact.against, view.job.units)} over it: set it higher or cut less"
        yield remark(view, "keep-clear-of-the-jaws", message, fact.key, fix=fix, set_up=set_up.key)
