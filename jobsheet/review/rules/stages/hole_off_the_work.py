"""Asks whether holes, slots and pockets lie on the work as it is by then."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.model.shape import Groove
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.plan.stage_facts import step_of
from jobsheet.review.rule import Needs, View, remark, rule
from jobsheet.stages.clash import RUN_OUT, crosses
from jobsheet.stages.course import Sized


@rule("hole-off-the-work", "Holes on the work", "hazard", needs=Needs.STAGES)
def hole_off_the_work(view: View) -> Iterator[Remark]:
    """The centre of a hole, slot or pocket lies beside the work as earlier steps have left it.

    Quiet for a slot, or a wall milled along a path, that goes over the work and runs out at an open end by no more than its cutter's
    width and 2 mm.

    Because: Beside the work stand vice, parallels and table, and the cutter goes into them.
    Not so: a hole at 62 in a plate that was milled to 60
    So: a hole at 52 in a plate that was milled to 60
    From: the solids of the plan
    """
    told: set[str] = set()
    for fact in view.facts_of("off-the-work"):
        step = step_of(view, fact.key)
        if step is None or fact.key in told or _runs_out(view, fact.key):
            continue
        told.add(fact.key)
        message = f"A centre lies {length(fact.found, view.job.units)} beside the work as it is by then: check the place, the zero and the way it counts"
        yield remark(view, "hole-off-the-work", message, fact.key, set_up=step[0].key)


def _runs_out(view: View, key: str) -> bool:
    """Whether it is a slot or a path with an open end, all of whose grooves cross the work and end no further out than a cutter needs."""
    step = next(step for step in plan_of(view).steps if step.key == key)
    grooves = [sized for sized in step.cut.shapes if isinstance(sized.shape, Groove)]
    return (
        step.roles.mills in ("groove", "wall")
        and not step.roles.closed
        and len(grooves) == len(step.cut.shapes)
        and all(_crosses(sized, step) for sized in grooves)
    )


def _crosses(sized: Sized, step: Step) -> bool:
    along, across, _ = step.lie.size
    out = max(getattr(sized.shape, "width", 0.0), step.fields.cutter.diameter or 0.0) + RUN_OUT
    one, other = sized.corners
    return crosses(one, other, (0.0, 0.0), (along, across)) and all(
        -out <= x <= along + out and -out <= y <= across + out for x, y in sized.corners
    )
