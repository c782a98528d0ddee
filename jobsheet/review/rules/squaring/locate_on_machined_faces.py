"""Asks whether a stop touches a machined end."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import MACHINED, Step, measured_across, plan_of, positions
from jobsheet.review.plan.held import fact
from jobsheet.review.rule import View, remark, rule


@rule("locate-on-machined-faces", "Stop against the machined end", "scrap")
def locate_on_machined_faces(view: View) -> Iterator[Remark]:
    """A stop touches a raw face though the machined face at the other end is free.

    Quiet where nothing is measured in that direction.

    Because: A raw face passes its error on.
    Not so: the sawn right end to the stop, holes counted from there
    So: the milled left end to the stop
    From: common practice
    """
    plan = plan_of(view)
    for set_up, steps in plan.groups():
        first = steps[0]
        face = _stopped(first)
        if face is None or not plan.raw(face, first.index):
            continue
        other = OPPOSITE[face]
        if plan.state(other, first.index) != MACHINED or not any(_measures(step, face) for step in steps):
            continue
        message = f"Stop against the machined end: {plan.named(face)} is raw, {plan.named(other)} is machined"
        fix = Fix(
            f"The {other} end to the stop", set_field(f"holding:{set_up.key}", "stop", first.lie.side(other))
        )
        yield remark(view, "locate-on-machined-faces", message, first.key, fix=fix, set_up=set_up.key)


def _stopped(first: Step) -> str | None:
    """The face at the one stop: at its left or right; straps may have stops at several sides, of which none is meant alone."""
    side = fact(first.set_up, "stop")
    found: str | None = getattr(first.lie, side) if side in ("left", "right") else None
    return found


def _measures(step: Step, face: str) -> bool:
    if positions(step.fields):
        return True
    across = measured_across(step)
    return across is not None and face in (across[0], OPPOSITE[across[0]])
