"""Asks whether a drill breaks sideways into something that was cut before."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import PLUGGED
from jobsheet.review.mending.fixes import moved_before
from jobsheet.review.plan.held import how
from jobsheet.review.plan.hole_chains import SAME, holes_of
from jobsheet.review.rule import View, remark, rule


@rule("drill-before-the-slot-it-meets", "Drill before the slot it meets", "scrap")
def drill_before_the_slot_it_meets(view: View) -> Iterator[Remark]:
    """A twist drill that runs half in a slot, pocket or step that was milled before.

    Because: The drill follows the easy side, bends, and snaps or leaves the hole out of place.
    Not so: slot, drill half in its wall
    So: drill, slot; or plug the slot
    From: common practice
    """
    found = holes_of(view.reckoned)
    told: set[str] = set()
    for chain in found.chains:
        for step in chain.steps:
            if step.does != "drill" or step.cutter.kind != "drill" or step.key in told:
                continue
            if how(step.operation, PLUGGED):
                continue
            for one in found.taken:
                if one.face != chain.face or one.index >= step.index:
                    continue
                inside, radius = one.inside(chain.at), step.diameter / 2
                if not -radius + SAME < inside < radius - SAME:
                    continue
                if any(before.diameter >= step.diameter - SAME for before in chain.before(step)):
                    continue
                told.add(step.key)
                fix = None
                if one.set_up == step.set_up:
                    fix = Fix(
                        f"Move {step.number} before {one.operation.number}",
                        moved_before(step.key, one.operation.key),
                    )
                message = f"This drill meets the cut of step {one.operation.number} sideways: drill first, or plug it"
                yield remark(
                    view, "drill-before-the-slot-it-meets", message, step.key, one.operation.key, fix=fix, set_up=step.set_up
                )  # fmt: skip
                break
