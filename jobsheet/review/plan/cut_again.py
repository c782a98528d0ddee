"""Faces that are cut again where the work should have been turned: the opposite one is never cut."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.finished_part import finished_part
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.shape import Edge, Slab
from jobsheet.review.plan.faces import Plan, Step

#: Of the first cut at least this share comes off again: a finishing pass takes
#: less (common practice, no source).
AGAIN = 0.5


def cut_again(plan: Plan, most_finish: float) -> Iterator[tuple[str, Step, Step]]:
    """Each such face, the step that cut it first and the one of another set-up that
    takes much the same off once more.

    A finishing pass takes no more than `most_finish` [m].
    """
    for face, cut in plan.made.items():
        other = OPPOSITE[face]
        if other in plan.made or _stays(plan, other):
            continue
        steps = [plan.steps[index] for index in cut]
        first = steps[0]
        before = sum(off(step, face) for step in steps if step.set_up.key == first.set_up.key)
        again = next((step for step in steps if step.set_up.key != first.set_up.key), None)
        if again is None or off(again, face) < AGAIN * before - 1e-9 or off(again, face) <= most_finish:
            continue
        yield face, first, again


def _stays(plan: Plan, face: str) -> bool:
    """Whether stock or drawing say that it stays as it is bought; what only nobody cuts is not said."""
    shape = finished_part(plan.job).shape
    return face in plan.job.stock.stays or (shape is not None and face in shape.as_bought)


def off(step: Step, face: str) -> float:
    """What a step takes off that face [m]."""
    if face not in step.makes:
        return 0.0
    return sum(
        sized.shape.depth if isinstance(sized.shape, Slab) else sized.shape.width
        for sized in step.cut.shapes
        if isinstance(sized.shape, Slab | Edge)
    )
