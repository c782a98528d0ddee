"""Asks whether a cut stays on what stands out of the chuck."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.chucked import Chucked, chucked, reaches
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule


@rule("clear-of-the-chuck", "Clear of the chuck", "hazard")
def clear_of_the_chuck(view: View) -> Iterator[Remark]:
    """A cut, or the point of a drill beside what the jaws hold, comes further than the work stands out of its chuck.

    Of work that lies along the end that its zero is found on is free, for the other is in the jaws; where none is found, either may be.
    Of work that stands up it is the top.

    Because: The cutter runs into jaws that turn with the work or stand like a wall.
    Not so: a flat 15 long, 12 out of the jaws
    So: a flat 15 long, 30 out of the jaws
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        found = chucked(set_up, steps[0])
        if found is None or found.out is None:
            continue
        cutting = [step for step in steps if step.cuts]
        ends = (0, 1) if found.free is None or found.upright else (found.free,)
        free = min(
            ends, key=lambda end: max((_far(found, steps[0], step, end) for step in cutting), default=0.0)
        )
        step = next((step for step in cutting if _far(found, steps[0], step, free) > found.out + 1e-9), None)
        if step is None:
            continue
        units = view.job.units
        far = _far(found, steps[0], step, free)
        message = (
            f"Step {step.number} comes {length(far, units)} from the free end, and {length(found.out, units)} stands out of the chuck:"
            " it meets the jaws"
        )
        yield remark(
            view, "clear-of-the-chuck", message, step.key, set_up=set_up.key,
            by_hand="let more of the work stand out, with the tailstock at its end where that is long, and enter it",
        )  # fmt: skip


def _far(found: Chucked, first: Step, step: Step, end: int) -> float:
    """The furthest that a step comes from that end, the right one (0) or the left (1) [m]."""
    return max((reach[end] for reach in reaches(found, first, step)), default=0.0)
