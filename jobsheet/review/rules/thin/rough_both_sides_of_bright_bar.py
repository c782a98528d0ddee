"""Asks whether bright bar is roughed on both sides before either is finished."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Slab
from jobsheet.reckoning.skin import may_bow
from jobsheet.review.mending.fixes import moved_after
from jobsheet.review.plan.faces import Plan, Step, plan_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule

#: Long bar: over so many times its thickness. Much off: over this share of it
#: (sequencing rules, the row of this rule).
LONG, SHARE = 5.0, 0.1


@rule("rough-both-sides-of-bright-bar", "Rough both sides of bright bar", "scrap")
def rough_both_sides_of_bright_bar(view: View) -> Iterator[Remark]:
    """Cold-drawn stock, long and thin, loses much from one side, and that side is finished before the other is roughed.

    Quiet for hot-rolled and stress-relieved stock, and where the other side stays as bought and no flatness is asked.

    Because: Stress sits near the skin: take one side and the other pulls.
    Not so: bright flat 100 × 20 × 10, 2 off the top to size, then 2 off the bottom
    So: rough top and bottom alike, let it rest, then finish both
    From: common practice
    """
    stock = view.job.stock
    if not may_bow(stock):
        return
    size = stock.sizes
    thick = min(size)
    axis = size.index(thick)
    if max(size) <= LONG * thick:
        return
    plan = plan_of(view)
    pair = (("left", "right"), ("front", "rear"), ("top", "bottom"))[axis]
    cut = [face for face in pair if face in plan.made]
    if not cut:
        return
    face = min(cut, key=lambda one: plan.made[one][0])
    mine = [plan.steps[index] for index in plan.made[face]]
    off = sum(_off(step) for step in mine)
    if off <= SHARE * thick + 1e-9:
        return
    last = mine[-1]
    other = _first_of_other(plan, OPPOSITE[face])
    if other is None:
        if not any(getattr(getattr(step.fields, "tolerances", None), "flat", None) for step in mine):
            return
        message = f"It may bow: {length(off, view.job.units)} come off one side of bright bar; take hot-rolled or stress-relieved stock"
        yield remark(view, "rough-both-sides-of-bright-bar", message, last.key, set_up=last.set_up.key)
        return
    if other.index < last.index:
        return
    message = (
        f"It may bow: step {last.number} finishes {plan.named(face)} before step {other.number} roughs the other side; rough both"
        " sides alike, let it rest, then finish, or take hot-rolled or stress-relieved stock"
    )
    fix = (
        Fix(f"Move {last.number} behind {other.number}", moved_after(last.key, other.key))
        if len(mine) > 1
        else None
    )
    yield remark(
        view, "rough-both-sides-of-bright-bar", message, last.key, other.key, fix=fix, set_up=last.set_up.key
    )


def _off(step: Step) -> float:
    return sum(sized.shape.depth if isinstance(sized.shape, Slab) else 0.0 for sized in step.cut.shapes)


def _first_of_other(plan: Plan, face: str) -> Step | None:
    return plan.first_cut(face)
