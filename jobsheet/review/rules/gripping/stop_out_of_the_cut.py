"""Asks whether a stop stands where an end is cut."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Edge
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import does, fact
from jobsheet.review.rule import View, remark, rule

#: What lies opposite: an end, or a side.
_END = {"left": "end", "right": "end", "front": "side", "rear": "side"}


@rule("stop-out-of-the-cut", "Stop out of the cut", "hazard")
def stop_out_of_the_cut(view: View) -> Iterator[Remark]:
    """The stop stands at the very end that is milled.

    Because: The cutter runs into it; and what is cut away no longer stands against it.
    Not so: the left end to the stop, then the left end milled
    So: the right end to the stop, then the left end milled
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        several = fact(set_up, "stops")
        # Straps have stops at several sides; a hold that is changed on the way
        # may have put them elsewhere by then.
        stops = (fact(set_up, "stop"),) if several is None else several.items
        held = tuple(steps)
        for index, step in enumerate(steps):
            if several is not None and does(step.operation, "change holding"):
                held = tuple(steps[:index])
                break
        for stop in stops:
            cut = next((step for step in held if stop in OPPOSITE and _cuts(step, stop)), None)
            if cut is None:
                continue
            others = ", ".join(dict.fromkeys(OPPOSITE[stop] if other == stop else other for other in stops))
            name = "stop" if several is None else "stops"
            fix = Fix(f"Stop at the {OPPOSITE[stop]}", set_field(f"holding:{set_up.key}", name, others))
            message = f"The stop stands at the {stop}, where this step cuts: put it at the other {_END[stop]}"
            yield remark(view, "stop-out-of-the-cut", message, cut.key, fix=fix, set_up=set_up.key)
            break


def _cuts(step: Step, side: str) -> bool:
    return any(isinstance(sized.shape, Edge) and sized.shape.side == side for sized in step.cut.shapes)
