"""Asks whether the first cut goes under scale or a cast skin."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Edge, Slab
from jobsheet.reckoning.skin import skin_of
from jobsheet.review.mending.best_here import best_here
from jobsheet.review.mending.fixes import in_turn, set_field
from jobsheet.review.plan.cuts import layer_of
from jobsheet.review.plan.faces import AS_BOUGHT, Plan, Step, measured_across, plan_of
from jobsheet.review.plan.lengths import fine, length, round_up, rounded
from jobsheet.review.plan.rough_and_finish import length_text
from jobsheet.review.rule import View, remark, rule


@rule("first-cut-under-the-skin", "First cut under the skin", "rework")
def first_cut_under_the_skin(view: View) -> Iterator[Remark]:
    """The first pass on black stock or on a casting is thinner than its skin.

    Quiet where the skin was pickled, blasted or ground off, and on sawn ends, which have none.

    Because: Skin is hard, and rubbing on it takes the edge off.
    Not so: first cut 0.1 on hot-rolled stock
    So: first cut 0.8
    From: common practice; the two depths are the workshop's numbers
    """
    plan = plan_of(view)
    for face in plan.made:
        skin, words = skin_of(view.job.stock, face, view.reckoned.shop)
        step = plan.first_cut(face)
        if not skin or step is None or plan.state(face, 0) == AS_BOUGHT:
            continue
        pass_ = _first_pass(step)
        if pass_ is None or pass_ >= skin - 1e-6:
            continue
        message = (
            f"Take the first cut deep enough to get under the skin: {length(pass_, view.job.units)} on {words}, under it is"
            f" {rounded(skin, view.job.units)} or more"
        )
        yield remark(
            view,
            "first-cut-under-the-skin",
            message,
            step.key,
            fix=_deeper(plan, step, face, skin, view.job.units),
            set_up=step.set_up.key,
            by_hand="take the first cut under the skin, and what is left to the size behind it",
        )


def _first_pass(step: Step) -> float | None:
    for sized in step.cut.shapes:
        if isinstance(sized.shape, Slab):
            return layer_of(step)
        if isinstance(sized.shape, Edge):
            cut = getattr(step.fields, "cut", None)
            left = getattr(step.fields, "leave", None)
            width = sized.shape.width - (left.value if left is not None else 0.0)
            return width / max(1, math.ceil(width / cut.value - 1e-9)) if cut is not None else width
    return None


def _deeper(plan: Plan, step: Step, face: str, skin: float, units: str) -> Fix | None:
    """Fewer layers where there is enough to come off; else deeper, by what the size still wants, or at the cost of the next cut.

    Nothing where neither gives so much: the part would come out too small.
    """
    name = "depth" if step.roles.mills == "flat" else "width"
    whole = getattr(step.fields, name).value
    if whole >= skin:
        return best_here(step.operation, step.setting, skin)
    skin = round_up(skin, units)
    wanted = whole + _still_to_come_off(plan, face)
    if wanted >= skin - 1e-9:
        text = length_text(wanted, units)
        return Fix(f"First cut {text}", set_field(step.key, name, text), (step.key,))
    behind = _behind(plan, step, face)
    left = getattr(behind.fields, name).value - (skin - whole) if behind is not None else 0.0
    if behind is None or left < step.setting.shop.least_finish:
        return None
    text = fine(skin, units)
    mend = in_turn(set_field(step.key, name, text), set_field(behind.key, name, length_text(left, units)))
    return Fix(f"First cut {text}", mend, (step.key, behind.key))


def _behind(plan: Plan, step: Step, face: str) -> Step | None:
    """The next cut on that face, of the same kind."""
    later = (
        other for other in plan.steps[step.index + 1 :] if face in other.makes and other.kind == step.kind
    )
    return next(later, None)


def _still_to_come_off(plan: Plan, face: str) -> float:
    """What the passes leave over the size across that face [m], by the last step that measures it."""
    found = 0.0
    for step in plan.steps:
        across = measured_across(step)
        if across is not None and face in (across[0], OPPOSITE[across[0]]):
            found = max(0.0, across[1] - step.fields.measure.nominal)
    return found
