"""Asks whether enough metal stays beside a hole."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.lengths import length
from jobsheet.review.plan.stage_facts import step_of
from jobsheet.review.rule import Needs, View, remark, rule


@rule("thin-metal-beside-a-hole", "Metal beside a hole", "scrap", needs=Needs.STAGES)
def thin_metal_beside_a_hole(view: View) -> Iterator[Remark]:
    """Less than a millimetre is left between a hole and the edge of the work.

    Because: The drill leans to where there is less metal, and the thin wall bulges or breaks out.
    Not so: drill 10 with its centre 5.5 from the edge
    So: drill 10 with its centre 10 from the edge; or mill the edge afterwards
    From: common practice; the solids of the plan
    """
    told: set[str] = set()
    for fact in view.facts_of("thin-wall"):
        step = step_of(view, fact.key)
        if step is None or fact.key in told:
            continue
        told.add(fact.key)
        message = f"Only {length(fact.found, view.job.units)} is left between this hole of {length(fact.against, view.job.units)} and the edge: check the place"
        yield remark(view, "thin-metal-beside-a-hole", message, fact.key, set_up=step[0].key)
