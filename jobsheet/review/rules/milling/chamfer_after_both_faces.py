"""Asks whether a chamfer is cut before its faces are done."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import moved_after
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.rule import View, remark, rule


@rule("chamfer-after-both-faces", "Chamfer after both faces", "scrap")
def chamfer_after_both_faces(view: View) -> Iterator[Remark]:
    """A chamfer of a size comes before the last cut on a face that meets there.

    Quiet for edges broken with a file and for the chamfers of holes.

    Because: Its width changes when a face is cut again.
    Not so: chamfer 1 × 45° all round, then the top to size
    So: the top to size, then the chamfer
    From: common practice
    """
    plan = plan_of(view)
    for step in plan.steps:
        if step.roles.mills != "edge":
            continue
        lie = step.lie
        faces = (
            {lie.up} if step.fields.edges == "one edge" else {lie.up, lie.left, lie.right, lie.near, lie.far}
        )
        later = [other for other in plan.steps[step.index + 1 :] if faces & set(other.makes)]
        if not later:
            continue
        last = later[-1]
        face = next(face for face in last.makes if face in faces)
        message = f"Chamfer after both faces are to size: step {last.number} cuts {plan.named(face)} again"
        fix = Fix(f"Move {step.number} behind {last.number}", moved_after(step.key, last.key))
        yield remark(
            view, "chamfer-after-both-faces", message, step.key, last.key, fix=fix, set_up=step.set_up.key
        )
