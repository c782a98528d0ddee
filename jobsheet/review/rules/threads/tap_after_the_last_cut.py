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
    found = holes_of(view.reckoned)
    told: set[str] = set()
    for chain in found.chains:
        for step in chain.steps:
            if step.does != "tap" or step.key in told:
                continue
            later = _across(found, chain, step)
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


def _across(found: Holes, chain: Chain, step: HoleStep) -> list[tuple[int, str, str]]:
    """Every later cut across the mouth, in cutting order: number, key and set-up."""
    lowered = found.lowered_later(chain, step)
    drilled = any(one.does in ("spot", "drill", "plunge") for one in chain.before(step))
    if drilled and sum(one.amount for one in lowered) > BURR:
        lowered = ()  # said by face-before-holes
    cuts = [(one.index, one.operation, one.set_up) for one in lowered]
    cuts += [
        (one.index, one.operation, one.set_up)
        for one in found.taken
        if one.face == chain.face and one.index > step.index and one.inside(chain.at) > -step.diameter / 2
    ]
    cuts += [
        (one.index, one.operation, one.set_up)
        for one in chain.after(step)
        if one.does in ("spot", "countersink", "counterbore", "drill")
    ]
    return [
        (operation.number, operation.key, set_up)
        for _, operation, set_up in sorted(cuts, key=lambda one: one[0])
    ]
