"""Asks whether a vice is closed harder than it or the work stands."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import size
from jobsheet.review.plan.jaws import sits
from jobsheet.review.rule import View, remark, rule

#: A vice stands so much of what its card calls usual, and plastic between its jaws so
#: much (common practice, no source).
VICE, PLASTIC = 1.5, 0.5


@rule("not-too-tight", "Not too tight", "scrap")
def not_too_tight(view: View) -> Iterator[Remark]:
    """A vice is tightened with more than one and a half times what its card calls usual, or plastic with more than half of that.

    Because: Plastic is squeezed, cut to size while it is, and springs to another size; a vice that is closed with a bar lifts the work
    and bends its jaws.
    Not so: a plastic tray in a vice closed with 30 N·m, as steel is
    So: the same tray in soft jaws, 6 N·m
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        found, torque = sits(set_up, steps[0]), size(set_up, "tighten")
        if found is None or found.vice is None or found.vice.usual_torque is None or torque is None:
            continue
        usual = found.vice.usual_torque
        first = next((step for step in steps if step.cuts), None)
        if first is None:
            continue
        plastic = first.setting.material.family == "plastic"
        most = usual * (PLASTIC if plastic else VICE)
        if torque <= most + 1e-9:
            continue
        aim = most if plastic else usual
        what = (
            "squeezes plastic out of shape" if plastic else f"is more than the {found.vice.name} is made for"
        )
        message = f"{torque:g} N·m {what}: it is usually tightened with {usual:g} N·m" + (
            f", and plastic with {most:g} at most" if plastic else ""
        )
        fix = Fix(f"Tighten to {aim:g} N·m", set_field(f"holding:{set_up.key}", "tighten", f"{aim:g} N·m"))
        yield remark(view, "not-too-tight", message, first.key, set_up=set_up.key, fix=fix)
