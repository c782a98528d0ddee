"""Asks whether a stop stands where an end is cut."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Edge
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import fact
from jobsheet.review.rule import View, remark, rule

_OTHER = {"left": "right", "right": "left"}


@rule("stop-out-of-the-cut", "Stop out of the cut", "hazard")
def stop_out_of_the_cut(view: View) -> Iterator[Remark]:
    """The stop stands at the very end that is milled.

    Because: The cutter runs into it; and what is cut away no longer stands against it.
    Not so: the left end to the stop, then the left end milled
    So: the right end to the stop, then the left end milled
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        stop = fact(set_up, "stop")
        if stop not in _OTHER:
            continue
        step = next((one for one in steps if _cuts(one, stop)), None)
        if step is None:
            continue
        fix = Fix(f"Stop at the {_OTHER[stop]}", set_field(f"holding:{set_up.key}", "stop", _OTHER[stop]))
        message = f"The stop stands at the {stop}, where this step cuts: put it at the other end"
        yield remark(view, "stop-out-of-the-cut", message, step.key, fix=fix, set_up=set_up.key)


def _cuts(step: Step, side: str) -> bool:
    return any(isinstance(sized.shape, Edge) and sized.shape.side == side for sized in step.cut.shapes)
