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
    holes = holes_of(view.reckoned)
    told: set[str] = set()
    for chain in holes.chains:
        step = next((step for step in chain.steps if step.does in ("spot", "drill", "plunge")), None)
        if step is None or step.set_up + chain.face in told or holes.cut_away_later(chain, step):
            continue
        later = holes.lowered_later(chain, step)
        if sum(lowered.amount for lowered in later) <= BURR:
            continue
        told.add(step.set_up + chain.face)
        here = [lowered for lowered in later if lowered.set_up == step.set_up]
        fix = None
        if here and len(here) == len(later):
            numbers = ", ".join(str(lowered.operation.number) for lowered in here)
            moves = (moved_before(lowered.operation.key, step.key) for lowered in here)
            fix = Fix(f"Move {numbers} before {step.number}", in_turn(*moves))
        message = f"Face first, then drill: step {later[0].operation.number} still lowers this face"
        keys = (step.key, *dict.fromkeys(lowered.operation.key for lowered in later))
        yield remark(view, "face-before-holes", message, *keys, fix=fix, set_up=step.set_up)
