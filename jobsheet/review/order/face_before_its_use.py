"""Asks whether the faces that a step measures from are there yet."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.faces import Plan, Step, measured_across, plan_of, positions, zero_faces, zero_found
from jobsheet.review.fixes import Mend, all_moved_before
from jobsheet.review.rule import View, remark, rule


@rule("face-before-its-use", "A face before its use", "scrap")
def face_before_its_use(view: View) -> Iterator[Remark]:
    """A size, or the zero of a set-up, is taken from a face that is machined only later.

    Quiet where the face stays as bought, where the zero is set inside the edge with its offset entered, and where
    the work only rests on a raw face and no size is taken from it.

    Why: Each step may only measure from something already true.
    Wrong: holes placed from the left end, then the left end milled
    Right: the left end milled, then holes placed from it
    Source: planning of set-ups for prismatic parts; college teaching of squaring
    """
    plan = plan_of(view)
    told: set[tuple[str, str]] = set()
    for step in plan.steps:
        for face, before in _used(plan, step):
            first = plan.first_cut(face)
            if first is None or (step.set_up.key, face) in told:
                continue
            told.add((step.set_up.key, face))
            name = plan.named(face)
            size = getattr(step.fields, "measure", None)
            what = (
                "places are counted from it"
                if positions(step.fields)
                else f"{size.text if size else 'a size'} is measured from it"
            )
            message = f"{name[:1].upper()}{name[1:]}, does not exist yet: {what}, and step {first.number} makes it only later"
            fix = Fix(f"Make {name} first: step {first.number}", _first(plan, face, first, before))
            yield remark(
                view, "face-before-its-use", message, step.key, first.key, fix=fix, set_up=step.set_up.key
            )


def _used(plan: Plan, step: Step) -> Iterator[tuple[str, Step]]:
    """Raw faces that a step measures from, and the step before which each must be made."""
    if positions(step.fields):
        found = zero_found(plan, step)
        if getattr(found.fields, "inside", None) is None:
            for face in zero_faces(step):
                if plan.raw(face, found.index):
                    yield face, found
    across = measured_across(step)
    if across is not None and plan.raw(across[0], step.index):
        yield across[0], step


def _first(plan: Plan, face: str, first: Step, before: Step) -> Mend:
    """What makes the face moves before that step: the whole set-up where it does nothing else at the machine."""
    making = tuple(step.key for step in plan.of(first.set_up.key) if face in step.makes)
    if first.set_up.key != before.set_up.key:
        return all_moved_before(making, plan.of(before.set_up.key)[0].key)
    return all_moved_before(making, before.key)
