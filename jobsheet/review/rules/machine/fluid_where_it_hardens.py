"""Asks whether a metal that hardens where it is rubbed is cut dry with high-speed steel."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import DRY, OILED
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import how
from jobsheet.review.rule import View, remark, rule


@rule("fluid-where-it-hardens", "Fluid where the metal hardens", "rework")
def fluid_where_it_hardens(view: View) -> Iterator[Remark]:
    """Stainless steel, or another metal that hardens where an edge rubs, is cut dry with tools of high-speed steel.

    Quiet for carbide, and for holes that are oiled or dry on purpose.

    Because: The edge heats, dulls and rubs, and what it rubs hardens: the next tooth or the tap does not get in.
    Not so: 304, dry
    So: 304, brushed with cutting oil
    From: common practice
    """
    plan = plan_of(view)
    if not plan.steps or view.job.fluid != "dry" or not plan.steps[0].setting.material.work_hardens:
        return
    steps = [step for step in plan.steps if _rubs(step)]
    if not steps:
        return
    numbers = f"step {steps[0].number}" if len(steps) == 1 else f"{len(steps)} steps with high-speed steel"
    message = (
        f"{plan.steps[0].setting.material.title} hardens where it is rubbed, and {numbers} would cut it dry"
    )
    yield remark(
        view, "fluid-where-it-hardens", message, steps[0].key, set_up=steps[0].set_up.key,
        fix=Fix("Brush it on", set_field("job", "fluid", "brushed")),
    )  # fmt: skip


def _rubs(step: Step) -> bool:
    cutter = getattr(step.fields, "cutter", None)
    return (
        step.cuts
        and cutter is not None
        and cutter.material != "carbide"
        and not how(step.operation, DRY, OILED)
    )
