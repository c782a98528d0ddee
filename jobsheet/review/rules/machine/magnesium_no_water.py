"""Asks whether magnesium is cut with water."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.rule import View, remark, rule


@rule("magnesium-no-water", "No water on magnesium", "hazard")
def magnesium_no_water(view: View) -> Iterator[Remark]:
    """Magnesium is cut, and neither dry nor mineral oil is what the plan says.

    A fluid that is only called brushed or flood may be mixed with water: the plan must say which it is.

    Because: Wet chips give off hydrogen, and burning magnesium splits water.
    Not so: flood
    So: dry, or brushed, and the fluid is mineral oil
    From: United States Air Force, technical order 1-1A-9, paragraph 4-21, magnesium; DGUV Information
    209-090e, Activities relating to magnesium, 1.1
    """
    plan = plan_of(view)
    job = view.job
    if not plan.steps or plan.steps[0].setting.material.family != "magnesium" or job.fluid == "dry":
        return
    if job.fluid_is == "mineral oil":
        return
    first = next((step for step in plan.steps if step.cuts), None)
    if first is None:
        return
    message = f"No water-based fluid on magnesium: the plan says {job.fluid or 'nothing'}; cut it dry, or say that the fluid is mineral oil"
    yield remark(
        view,
        "magnesium-no-water",
        message,
        first.key,
        fix=Fix("Cut it dry", set_field("job", "fluid", "dry")),
        set_up=first.set_up.key,
    )
