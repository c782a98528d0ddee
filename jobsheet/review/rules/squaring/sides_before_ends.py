"""Asks whether an end is cut before the sides that set it upright."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import moved_set_up
from jobsheet.review.plan.faces import in_vice, plan_of
from jobsheet.review.rule import View, remark, rule


@rule("sides-before-ends", "Sides before ends", "rework")
def sides_before_ends(view: View) -> Iterator[Remark]:
    """An end is cut with the work stood up and gripped by a side that is raw now and machined later.

    Quiet where the sides gripped are machined or as bought, and where the end is cut lying flat.

    Because: Ends are set upright by finished sides.
    Not so: stand the raw bar up, mill its end, then its sides
    So: mill the four sides, then the ends
    From: Goodheart-Willcox, Modern Metalworking, 2018, page 484; from memory of shop practice
    """
    plan = plan_of(view)
    for set_up, steps in plan.groups():
        first = steps[0]
        along, across, high = first.lie.size
        if not in_vice(set_up, first.lie) or high <= max(along, across):
            continue
        ends = [step for step in steps if set_up.up in step.makes]
        raw = [face for face in (set_up.fixed_jaw, OPPOSITE[set_up.fixed_jaw]) if plan.raw(face, first.index)]
        made = [
            step
            for face in raw
            if (step := plan.first_cut(face)) is not None and step.set_up.key != set_up.key
        ]
        if not ends or not made:
            continue
        last = max(made, key=lambda step: step.index)
        message = (
            f"Square the sides before the ends: set-up {set_up.number} stands the work up by {plan.named(raw[0])}, which"
            f" step {last.number} makes later"
        )
        fix = Fix(
            f"Move set-up {set_up.number} behind set-up {last.set_up.number}",
            moved_set_up(set_up.key, last.set_up.key, behind=1),
        )
        yield remark(view, "sides-before-ends", message, ends[0].key, last.key, fix=fix, set_up=set_up.key)
