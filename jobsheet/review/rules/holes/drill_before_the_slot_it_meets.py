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
    holes = holes_of(view.reckoned)
    told: set[str] = set()
    for chain in holes.chains:
        for step in chain.steps:
            if step.does != "drill" or step.cutter.kind != "drill" or step.key in told:
                continue
            if how(step.operation, PLUGGED):
                continue
            for taken in holes.taken:
                if taken.face != chain.face or taken.index >= step.index:
                    continue
                inside, radius = taken.inside(chain.at), step.diameter / 2
                if not -radius + SAME < inside < radius - SAME:
                    continue
                if any(before.diameter >= step.diameter - SAME for before in chain.before(step)):
                    continue
                told.add(step.key)
                fix = None
                if taken.set_up == step.set_up:
                    fix = Fix(
                        f"Move {step.number} before {taken.operation.number}",
                        moved_before(step.key, taken.operation.key),
                    )
                message = f"This drill meets the cut of step {taken.operation.number} sideways: drill first, or plug it"
                yield remark(
                    view, "drill-before-the-slot-it-meets", message, step.key, taken.operation.key, fix=fix, set_up=step.set_up
                )  # fmt: skip
                break
