"""Asks whether the faces that a step measures from are there yet."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import Mend, all_moved_after, all_moved_before, moved_set_up
from jobsheet.review.plan.faces import Plan, Step, measured_across, plan_of, positions, zero_faces, zero_found
from jobsheet.review.rule import View, remark, rule


@rule("face-before-its-use", "A face before its use", "scrap")
def face_before_its_use(view: View) -> Iterator[Remark]:
    """A size, or the zero of a set-up, is taken from a face that is machined only later.

    Quiet where the face stays as bought, where the zero is set inside the edge with its offset entered, and where
    the work only rests on a raw face and no size is taken from it.

    Because: Each step may only measure from something already true.
    Not so: holes placed from the left end, then the left end milled
    So: the left end milled, then holes placed from it
    From: IPROMS conference, paper 3138, planning of set-ups for prismatic parts
    """
    plan = plan_of(view)
    told: set[tuple[str, str]] = set()
    for step in plan.steps:
        for face, before in _used(plan, step):
            first = plan.first_cut(face)
            if first is None or (step.set_up.key, face) in told:
                continue
            told.add((step.set_up.key, face))
            name = plan.subject(face)
            size = getattr(step.fields, "measure", None)
            what = (
                "places are counted from it"
                if positions(step.fields)
                else f"{size.said if size else 'a size'} is measured from it"
            )
            message = f"{name[:1].upper()}{name[1:]} does not exist yet: {what}, and step {first.number} makes it only later"
            mend = _first(plan, step, face, first, before)
            fix = Fix(f"Step {first.number} before step {before.number}", mend, _of(step)) if mend else None
            yield remark(
                view, "face-before-its-use", message, step.key, first.key, set_up=step.set_up.key,
                fix=fix, others=_whole(first, before) if mend else (),
            )  # fmt: skip


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


def _first(plan: Plan, step: Step, face: str, first: Step, before: Step) -> Mend | None:
    """What makes the face moves before that step; where it would be stood up by raw sides then, the step moves behind it.

    Two faces that are each measured from the other have no right order: that only a person can mend.
    """
    making = tuple(other for other in plan.of(first.set_up.key) if face in other.makes)
    if any((across := measured_across(other)) is not None and across[0] in step.makes for other in making):
        return None
    keys = tuple(other.key for other in making)
    if first.set_up.key == before.set_up.key:
        return all_moved_before(keys, before.key)
    if before is step and _stands_on_raw(plan, first, before):
        using = tuple(
            other.key for other in plan.of(step.set_up.key) if set(other.makes) & set(step.makes)
        ) or (step.key,)
        return all_moved_after(using, keys[-1])
    return all_moved_before(keys, plan.of(before.set_up.key)[0].key)


def _whole(first: Step, before: Step) -> tuple[Fix, ...]:
    """The whole set-up that makes the face moves, where the one step alone would leave others behind that belong to it."""
    set_up, other = first.set_up, before.set_up
    if set_up.key == other.key:
        return ()
    return (
        Fix(
            f"Set-up {set_up.number} before set-up {other.number}",
            moved_set_up(set_up.key, other.key),
            _of(before),
        ),
    )


def _of(step: Step) -> tuple[str, ...]:
    """All steps of its set-up: their places and depths count from the face that comes first then."""
    return tuple(operation.key for operation in step.set_up.operations)


def _stands_on_raw(plan: Plan, first: Step, before: Step) -> bool:
    """Whether the set-up that makes the face stands the work up, and would grip raw sides if it came before that step."""
    along, across, high = first.lie.size
    jaws = (first.set_up.fixed_jaw, OPPOSITE[first.set_up.fixed_jaw])
    return high > max(along, across) and any(plan.raw(jaw, before.index) for jaw in jaws)
