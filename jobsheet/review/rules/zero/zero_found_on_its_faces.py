"""Asks whether the zero is found on the faces that it counts from."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, plan_of, positions, zero_faces
from jobsheet.review.rule import View, remark, rule


@rule("zero-found-on-its-faces", "Zero found on its faces", "scrap")
def zero_found_on_its_faces(view: View) -> Iterator[Remark]:
    """The faces that a step finds are not those from which its set-up counts.

    One face that is found only to mill a wall from it is no zero. Faces go by their names in the drawing, however the work lies.

    Because: Every place is off by the difference of the sizes, or counts into the air.
    Not so: the right and the front face found, places counted from the left and the front
    So: the left and the front face found
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        if set_up.zero.stands_on not in ("", "edges"):
            continue
        placed = any(positions(step.fields) for step in steps)
        for step in steps:
            found = _found(step)
            wanted = set(zero_faces(step))
            if not found or found == wanted or (not placed and len(found) < len(wanted)):
                continue
            text = ", ".join(zero_faces(step))
            message = f"The places here count from {_listed(wanted)}, and {_listed(found)} is found: find those they count from"
            fix = Fix(f"Find {text}", set_field(step.key, "zero_on", text))
            yield remark(view, "zero-found-on-its-faces", message, step.key, fix=fix, set_up=set_up.key)


def _found(step: Step) -> set[str]:
    """The faces round the work that a step finds; what is up or down counts for no place."""
    on = getattr(step.fields, "zero_on", None)
    return (
        {face for face in on.items if face not in (step.lie.up, step.lie.down)} if on is not None else set()
    )


def _listed(faces: set[str]) -> str:
    return " and ".join(sorted(faces))
