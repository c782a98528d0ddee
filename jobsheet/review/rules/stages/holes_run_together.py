"""Asks whether two holes of one face run into each other."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.operations.manners import ON_PURPOSE, PLUGGED
from jobsheet.review.plan.as_asked import misplaced
from jobsheet.review.plan.held import how
from jobsheet.review.plan.lengths import length
from jobsheet.review.plan.stage_facts import step_of
from jobsheet.review.rule import Needs, View, remark, rule


@rule("holes-run-together", "Holes that run together", "scrap", needs=Needs.STAGES)
def holes_run_together(view: View) -> Iterator[Remark]:
    """A hole breaks sideways into a hole that an earlier step made in the same face.

    Holes that are meant to meet, such as the row that drills out a slot, say so, or are plugged.

    Because: The drill follows the easy side and bends; and where they were not meant to meet, the wall between them is gone.
    Not so: drill 10 at 20 and at 26
    So: drill 10 at 20 and at 32; or plug the first hole
    From: common practice; the solids of the plan
    """
    told: set[str] = set(misplaced(view))
    for fact in view.facts_of("breaks-into"):
        found, other = step_of(view, fact.key), step_of(view, fact.about)
        if found is None or fact.key in told:
            continue
        if any(how(one[1], PLUGGED, ON_PURPOSE) for one in (found, other) if one is not None):
            continue
        told.add(fact.key)
        number = f" of step {other[1].number}" if other is not None else ""
        keys = (fact.key,) if other is None else (fact.key, fact.about)
        message = f"It runs {length(fact.found, view.job.units)} into the hole{number}: move it, or plug that hole first"
        yield remark(view, "holes-run-together", message, *keys, set_up=found[0].key)
