"""Asks whether an angle plate is bolted down and trued."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.asked_form import asked_of_part, asked_of_step
from jobsheet.review.plan.faces import Step, plan_of, width_of_limits
from jobsheet.review.plan.held import does, fact, holding_roles
from jobsheet.review.rule import View, remark, rule


@rule("angle-plate-bolted", "Angle plate bolted down", "hazard")
def angle_plate_bolted(view: View) -> Iterator[Remark]:
    """Work on an angle plate is cut, and no bolts hold the plate down, or nobody says how many.

    Because: The cut pushes plate and work off the table together.
    Not so: work clamped to an angle plate that only stands there
    So: the angle plate held by two bolts
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        first = next((step for step in steps if step.cuts), None)
        if first is None or not holding_roles(set_up).upright or fact(set_up, "plate_bolts"):
            continue
        message = (
            "Nothing bolts the angle plate down"
            if fact(set_up, "plate_bolts") == 0
            else "How many bolts hold the angle plate down? Nothing says so"
        )
        fix = Fix("Two bolts", set_field(f"holding:{set_up.key}", "plate_bolts", "2"))
        yield remark(view, "angle-plate-bolted", message, first.key, fix=fix, set_up=set_up.key)


@rule("angle-plate-squared", "Angle plate squared", "scrap")
def angle_plate_squared(view: View) -> Iterator[Remark]:
    """The angle plate was squared by nothing; or a size with limits, or a square face, is cut on it, and it is not said by what it was.

    A step that squares up says enough where the holding does not; where the holding says by nothing, that counts.

    Because: It stands as it was set down: what is cut on it is out by as much.
    Not so: an angle plate bolted down by eye
    So: an angle plate squared with the indicator, then bolted down
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        if not holding_roles(set_up).upright:
            continue
        by, asking = fact(set_up, "squared_by"), next((step for step in steps if _asks(view, step)), None)
        if by is None and any(does(step.operation, "square up") for step in steps):
            continue
        first = asking or next((step for step in steps if step.cuts), None)
        if by in ("indicator", "square") or first is None or (by is None and asking is None):
            continue
        message = (
            "The angle plate is squared by nothing"
            if by
            else "By what is the angle plate squared? A size or face with limits is cut on it"
        )
        fix = Fix("By the indicator", set_field(f"holding:{set_up.key}", "squared_by", "indicator"))
        yield remark(view, "angle-plate-squared", message, first.key, fix=fix, set_up=set_up.key)


def _asks(view: View, step: Step) -> bool:
    """Whether a size or the form of a face has limits."""
    return bool(width_of_limits(step) or asked_of_step(step) or any(asked_of_part(view.job, step)))
