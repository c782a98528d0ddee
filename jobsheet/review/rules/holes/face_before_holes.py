"""Asks whether the face of a hole is finished before the hole is made."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import in_turn, moved_before
from jobsheet.review.plan.hole_chains import holes_of
from jobsheet.review.rule import View, remark, rule

#: A cut no deeper than this only takes off a burr [m] (common practice, no source).
BURR = 0.05e-3


@rule("face-before-holes", "Face before the holes", "rework")
def face_before_holes(view: View) -> Iterator[Remark]:
    """A hole that is spotted or drilled in a face which a later step still lowers.

    Because: Place and depth are measured from the finished face, and the edge burrs once.
    Not so: drill, face
    So: face, drill
    From: common practice
    """
    found = holes_of(view.reckoned)
    told: set[str] = set()
    for chain in found.chains:
        step = next((one for one in chain.steps if one.does in ("spot", "drill", "plunge")), None)
        if step is None or step.set_up + chain.face in told or found.cut_away_later(chain, step):
            continue
        later = found.lowered_later(chain, step)
        if sum(one.amount for one in later) <= BURR:
            continue
        told.add(step.set_up + chain.face)
        here = [one for one in later if one.set_up == step.set_up]
        fix = None
        if here and len(here) == len(later):
            numbers = ", ".join(str(one.operation.number) for one in here)
            moves = (moved_before(one.operation.key, step.key) for one in here)
            fix = Fix(f"Move {numbers} before {step.number}", in_turn(*moves))
        message = f"Face first, then drill: step {later[0].operation.number} still lowers this face"
        keys = (step.key, *dict.fromkeys(one.operation.key for one in later))
        yield remark(view, "face-before-holes", message, *keys, fix=fix, set_up=step.set_up)
