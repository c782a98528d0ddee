"""Asks whether a true face stands at the fixed jaw."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.stock import FACES
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import MACHINED, in_vice, plan_of
from jobsheet.review.rule import View, remark, rule


@rule("machined-face-to-fixed-jaw", "Machined face to the fixed jaw", "scrap")
def machined_face_to_fixed_jaw(view: View) -> Iterator[Remark]:
    """A raw face is at the fixed jaw though a machined one, square to the face being cut, is free for it.

    Quiet for the first cut on raw stock, and where the only machined face is up or down.

    Because: Only the fixed jaw can be trusted to stand square to the table.
    Not so: face 1 machined, and the raw face opposite it at the fixed jaw
    So: face 1 to the fixed jaw
    From: Virtual Machine Shop, course unit on squaring a block
    """
    plan = plan_of(view)
    for set_up, steps in plan.groups():
        first = steps[0]
        if not in_vice(set_up, first.lie) or not any(step.makes or step.cuts for step in steps):
            continue
        if not plan.untrue(set_up.fixed_jaw, first.index):
            continue
        free = [
            face
            for face in FACES
            if plan.state(face, first.index) == MACHINED and face not in (set_up.up, OPPOSITE[set_up.up])
        ]
        if not free:
            continue
        # The face at the moving jaw comes first: the work is only turned round.
        best = min(free, key=lambda face: face != OPPOSITE[set_up.fixed_jaw])
        message = f"Machined face to the fixed jaw: {plan.named(set_up.fixed_jaw)} is raw, {plan.named(best)} is machined and free"
        fix = Fix(f"The {best} face to the fixed jaw", set_field(f"setup:{set_up.key}", "fixed_jaw", best))
        yield remark(view, "machined-face-to-fixed-jaw", message, first.key, fix=fix, set_up=set_up.key)
