"""Asks whether the finishing pass of a face comes last."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import moved_after
from jobsheet.review.plan.cuts import layer_of
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: What follows a finishing pass takes at least so many times as much before it counts as
#: roughing (common practice, no source).
TIMES = 2.0


@rule("rough-before-finish", "Roughing before finishing", "rework")
def rough_before_finish(view: View) -> Iterator[Remark]:
    """The last pass over a face takes at least twice as much as one before it that is as thin as a finishing pass.

    Because: The finish is milled off again, and the size comes from the roughing cut.
    Not so: 0.2 off, then 2 off
    So: 2 off, then 0.2 off
    From: common practice; how thin a finishing pass is is the workshop's number
    """
    most = view.reckoned.shop.most_finish
    plan = plan_of(view)
    for face in plan.made:
        for set_up, steps in plan.groups():
            passes = [step for step in steps if face in step.makes and _thick(step)]
            if len(passes) < 2:
                continue
            last = passes[-1]
            thin = min(passes[:-1], key=_thick)
            if (
                _thick(thin) > most + 1e-9
                or _thick(last) < TIMES * _thick(thin) - 1e-9
                or _thick(last) <= most + 1e-9
            ):
                continue
            units = view.job.units
            message = (
                f"Step {thin.number} takes {length(_thick(thin), units)} off {plan.named(face)}, and this one {length(_thick(last), units)}"
                " after it: rough first, finish last"
            )
            yield remark(
                view, "rough-before-finish", message, last.key, thin.key, set_up=set_up.key,
                fix=Fix(f"Move {thin.number} behind {last.number}", moved_after(thin.key, last.key)),
            )  # fmt: skip


def _thick(step: Step) -> float:
    """How thick its last layer is [m]; nought where it leaves a finishing pass of its own."""
    if getattr(step.fields, "leave", None) is not None:
        return 0.0
    if step.roles.mills == "flat":
        return layer_of(step) or 0.0
    cut = getattr(step.fields, "cut", None)
    return (
        float(cut.value if cut is not None else step.fields.width.value)
        if step.roles.mills == "wall"
        else 0.0
    )
