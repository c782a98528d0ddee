"""Asks whether a thread is cut after everything that crosses its mouth."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import moved_after
from jobsheet.review.plan.hole_chains import Chain, Holes, HoleStep, holes_of
from jobsheet.review.rule import View, remark, rule

#: Up to here a facing takes a burr off, as face-before-holes has it, and still folds one into a thread [m].
BURR = 0.05e-3


@rule("tap-after-the-last-cut", "Tap after the last cut", "rework")
def tap_after_the_last_cut(view: View) -> Iterator[Remark]:
    """A thread that is cut before a later cut across its mouth: facing, a slot or step, a countersink.

    Because: Milling folds a burr into the thread.
    Not so: tap, face
    So: face, drill, tap
    From: common practice
    """
    holes = holes_of(view.reckoned)
    told: set[str] = set()
    for chain in holes.chains:
        for step in chain.steps:
            if step.does != "tap" or step.key in told:
                continue
            later = _across(holes, chain, step)
            if not later:
                continue
            told.add(step.key)
            number, key, set_up = later[-1]
            fix = (
                Fix(f"Move {step.number} behind {number}", moved_after(step.key, key))
                if set_up == step.set_up
                else None
            )
            message = f"Step {number} cuts across this thread's mouth afterwards: tap after the last cut on this face"
            yield remark(view, "tap-after-the-last-cut", message, step.key, key, fix=fix, set_up=step.set_up)


def _across(holes: Holes, chain: Chain, step: HoleStep) -> list[tuple[int, str, str]]:
    """Every later cut across the mouth, in cutting order: number, key and set-up."""
    lowered = holes.lowered_later(chain, step)
    drilled = any(hole_step.does in ("spot", "drill", "plunge") for hole_step in chain.before(step))
    if drilled and sum(other.amount for other in lowered) > BURR:
        lowered = ()  # said by face-before-holes
    cuts = [(other.index, other.operation, other.set_up) for other in lowered]
    cuts += [
        (taken.index, taken.operation, taken.set_up)
        for taken in holes.taken
        if taken.face == chain.face
        and taken.index > step.index
        and taken.inside(chain.at) > -step.diameter / 2
    ]
    cuts += [
        (hole_step.index, hole_step.operation, hole_step.set_up)
        for hole_step in chain.after(step)
        if hole_step.does in ("spot", "countersink", "counterbore", "drill")
    ]
    return [
        (operation.number, operation.key, set_up)
        for _, operation, set_up in sorted(cuts, key=lambda one: one[0])
    ]
