"""Asks whether a round bar stays in though both faces are true."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import MACHINED, in_vice, plan_of
from jobsheet.review.plan.held import fact
from jobsheet.review.rule import View, remark, rule


@rule("bar-out-when-parallel", "Bar out when parallel", "habit")
def bar_out_when_parallel(view: View) -> Iterator[Remark]:
    """A round bar is entered though both faces in the jaws are machined.

    Because: Full contact holds better once both faces are true.
    Not so: four sides machined, round bar at the moving jaw
    So: four sides machined, nothing between
    From: common practice
    """
    plan = plan_of(view)
    for set_up, steps in plan.groups():
        first = steps[0]
        if not in_vice(set_up, first.lie) or not fact(set_up, "bar"):
            continue
        jaws = (set_up.fixed_jaw, OPPOSITE[set_up.fixed_jaw])
        if any(plan.state(face, first.index) != MACHINED for face in jaws):
            continue
        message = f"Take the round bar out for this side: the {jaws[0]} and {jaws[1]} faces are both machined"
        fix = Fix("Take the round bar out", set_field(f"holding:{set_up.key}", "bar", "no"))
        yield remark(view, "bar-out-when-parallel", message, first.key, fix=fix, set_up=set_up.key)
