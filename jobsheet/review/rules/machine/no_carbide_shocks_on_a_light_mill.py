"""Asks whether carbide is knocked on a light machine."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.mending.line_texts import in_high_speed_steel
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.interrupted import opened_before
from jobsheet.review.rule import View, remark, rule


@rule("no-carbide-shocks-on-a-light-mill", "No shocks for carbide on a light mill", "habit")
def no_carbide_shocks_on_a_light_mill(view: View) -> Iterator[Remark]:
    """On a machine of the bench class a carbide cutter passes over holes or slots, or runs with the rotation.

    Quiet where a clean cut with it was recorded.

    Because: Carbide chips when shocked or rubbed backwards.
    Not so: carbide face mill over a row of holes on a bench mill
    So: an HSS cutter there, or the holes later
    From: common practice
    """
    plan = plan_of(view)
    for step in plan.steps:
        cutter = getattr(step.fields, "cutter", None)
        if not step.roles.sizes or cutter is None or cutter.material != "carbide":
            continue
        if step.setting.machine.stiffness_class != "bench" or any(
            limit.verdict == "cut before" for limit in step.outcome.limits
        ):
            continue
        climbs = getattr(step.fields, "way", "") == "climb"
        opened = opened_before(plan, step, own_holes=True) if step.roles.mills == "flat" else None
        if climbs:
            reason = "it runs with the rotation"
        elif opened is not None:
            reason = f"the cut is interrupted by what step {opened.number} left open"
        else:
            continue
        text = in_high_speed_steel(cutter.text)
        fix = Fix("An HSS cutter", set_field(step.key, "cutter", text)) if text != cutter.text else None
        yield remark(
            view,
            "no-carbide-shocks-on-a-light-mill",
            f"Consider HSS here: {reason}",
            step.key,
            fix=fix,
            set_up=step.set_up.key,
        )
