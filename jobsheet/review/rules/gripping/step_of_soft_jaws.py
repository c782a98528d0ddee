"""Asks whether the step of soft jaws is deep enough to hold by."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import fact, size
from jobsheet.review.plan.lengths import length, rounded
from jobsheet.review.rule import View, remark, rule

#: A step holds by so much at least [m] (holding-and-more-kinds A1, common practice).
LEAST = 2e-3
#: The step that is offered [m] (common practice).
TAKEN = 3e-3


@rule("step-of-soft-jaws", "Step of the soft jaws", "hazard")
def step_of_soft_jaws(view: View) -> Iterator[Remark]:
    """The step that was cut into soft jaws is less than two millimetres deep.

    Because: The work climbs out of so little.
    Not so: soft jaws, a step of 1 mm
    So: soft jaws, a step of 3 mm
    From: common practice
    """
    for set_up in view.job.set_ups:
        step = size(set_up, "step")
        if fact(set_up, "jaws") != "soft" or step is None or step >= LEAST - 1e-9 or not set_up.operations:
            continue
        wanted = rounded(TAKEN, view.job.units)
        message = f"The step of the soft jaws is {length(step, view.job.units)} deep: {rounded(LEAST, view.job.units)} or more holds"
        fix = Fix(f"A step of {wanted}", set_field(f"holding:{set_up.key}", "step", wanted))
        yield remark(view, "step-of-soft-jaws", message, set_up.operations[0].key, fix=fix, set_up=set_up.key)
