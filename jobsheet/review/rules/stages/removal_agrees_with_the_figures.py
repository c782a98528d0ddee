"""Asks whether a step takes the volume that its figures say."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.operations.registry import roles
from jobsheet.review.plan.cuts import hole_within
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.stage_facts import step_of
from jobsheet.review.rule import Needs, View, remark, rule
from jobsheet.units.show import significant


@rule("removal-agrees-with-the-figures", "Volume as the figures say", "rework", needs=Needs.STAGES)
def removal_agrees_with_the_figures(view: View) -> Iterator[Remark]:
    """The solid loses by a third more or less than the minutes of this step were reckoned for.

    Quiet where a slot or pocket was drilled out before, so that less is left to mill.

    Because: Width, depth or length of the cut is not what the work has there, so minutes and load are out too.
    Not so: a side cut 20 long in the plan, the side is 80 long
    So: the length left empty, or 80
    From: the solids of the plan; common practice
    """
    told: set[str] = set()
    for fact in view.facts_of("volume-differs"):
        step = step_of(view, fact.key)
        if step is None or fact.key in told or roles(step[1]).mills == "edge":
            continue  # edges that are chamfered by turning the work round are counted by their length alone
        if fact.found < fact.against and _drilled_out(view, fact.key):
            continue
        told.add(fact.key)
        cut, figure = (significant(value * 1e6) for value in (fact.found, fact.against))
        message = f"The step takes {cut} cm³ of the work and was calculated for {figure}: check length, width and depth"
        yield remark(view, "removal-agrees-with-the-figures", message, fact.key, set_up=step[0].key)


def _drilled_out(view: View, key: str) -> bool:
    """Whether a hole of some size was made inside its outline before."""
    plan = plan_of(view)
    step = next(step for step in plan.steps if step.key == key)
    cutter = getattr(step.fields, "cutter", None)
    return cutter is not None and bool(cutter.diameter) and hole_within(plan, step, cutter.diameter / 2)
