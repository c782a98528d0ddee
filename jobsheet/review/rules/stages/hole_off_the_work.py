"""Asks whether holes, slots and pockets lie on the work as it is by then."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.lengths import length
from jobsheet.review.plan.stage_facts import step_of
from jobsheet.review.rule import Needs, View, remark, rule


@rule("hole-off-the-work", "Holes on the work", "hazard", needs=Needs.STAGES)
def hole_off_the_work(view: View) -> Iterator[Remark]:
    """The centre of a hole, slot or pocket lies beside the work as earlier steps have left it.

    Because: Beside the work stand vice, parallels and table, and the cutter goes into them.
    Not so: a hole at 62 in a plate that was milled to 60
    So: a hole at 52 in a plate that was milled to 60
    From: the solids of the plan
    """
    told: set[str] = set()
    for fact in view.facts_of("off-the-work"):
        found = step_of(view, fact.key)
        if found is None or fact.key in told:
            continue
        told.add(fact.key)
        message = f"A centre lies {length(fact.found, view.job.units)} beside the work as it is by then: check the place, the zero and the way it counts"
        yield remark(view, "hole-off-the-work", message, fact.key, set_up=found[0].key)
