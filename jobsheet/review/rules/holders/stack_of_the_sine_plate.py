"""Asks whether the stack under a sine plate sets its angle."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.holdings.kinds.sine_plate import stack_for
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import fact, holding_roles, size
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.rule import View, remark, rule

#: So far a stack may be off [m]: as slip gauges and a sine bar of a workshop go
#: together (common practice, no source).
OFF = 0.02e-3


@rule("stack-of-the-sine-plate", "Stack of the sine plate", "scrap")
def stack_of_the_sine_plate(view: View) -> Iterator[Remark]:
    """The stack is not the distance of the rolls times the sine of the angle, by more than 0.02 mm.

    Because: The angle comes out of the stack alone: what is off there is off on the work.
    Not so: rolls 100 apart, 12.5 degrees, stack 22
    So: rolls 100 apart, 12.5 degrees, stack 21.644
    From: H = L sin θ
    """
    for set_up in view.job.set_ups:
        rolls, stack, angle = size(set_up, "rolls"), size(set_up, "stack"), fact(set_up, "angle")
        if not holding_roles(set_up).leans or rolls is None or stack is None or angle is None:
            continue
        wanted = stack_for(rolls, angle.value)
        if abs(stack - wanted) <= OFF + 1e-12 or not set_up.operations:
            continue
        text = typed(wanted, view.job.units, 3)
        message = f"{angle.text} over rolls {length(rolls, view.job.units)} apart is a stack of {text}, and {fact(set_up, 'stack').text} is entered"
        fix = Fix(f"Stack {text}", set_field(f"holding:{set_up.key}", "stack", text))
        yield remark(
            view, "stack-of-the-sine-plate", message, set_up.operations[0].key, fix=fix, set_up=set_up.key
        )
