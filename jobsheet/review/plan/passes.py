"""Steps whose passes do not add up to the size that they name."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.operations.manners import TO_SIZE
from jobsheet.review.plan.faces import Plan, Step, measured_across
from jobsheet.review.plan.held import how
from jobsheet.review.plan.shoulders import opposite_of_shoulder, shoulders

#: So far the sum of the passes may be off [m] (sequencing rules, the row of the rule about them).
OFF = 0.05e-3


def passes_out(plan: Plan) -> Iterator[tuple[Step, float, float]]:
    """Each such step, what is left there, and by how much that is more than its size [m].

    Not where the last pass is to the measured size, nor while the face it is measured from is still raw. Of
    the shoulders that are out where the faces around them are, none: that is one fault, not two.
    """
    told = False
    for step in plan.steps:
        found = measured_across(step)
        if found is None or plan.raw(found[0], step.index) or how(step.operation, TO_SIZE):
            continue
        size = step.fields.measure
        left = _across_both(plan, step, found[1])
        off = left - size.nominal
        if abs(off) <= OFF + 1e-9 or size.low - 1e-9 <= left <= size.high + 1e-9:
            continue
        if told and not step.makes:
            continue
        told = True
        yield step, left, off


def _across_both(plan: Plan, step: Step, left: float) -> float:
    """What a size goes over: to the far face, or to the shoulder that an earlier step cut there,
    whichever is nearer to the size asked [m].
    """
    nominal = step.fields.measure.nominal
    faces = opposite_of_shoulder(step)
    others = [
        left - width
        for other in plan.steps[: step.index]
        if other.lie.up == step.lie.up
        for face, width in shoulders(other)
        if face in faces
    ]
    return min((left, *others), key=lambda one: abs(one - nominal))
