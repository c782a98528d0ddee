"""Asks whether a stop touches a machined end."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import MACHINED, Plan, Step, measured_across, plan_of, positions
from jobsheet.review.plan.words import said
from jobsheet.review.rule import View, remark, rule

_NOW = {"left": "left", "right": "right", "front": "near", "rear": "far"}


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
        face = _stopped(plan, first)
        if face is None or not plan.raw(face, first.index):
            continue
        other = OPPOSITE[face]
        if plan.state(other, first.index) != MACHINED or not any(_measures(step, face) for step in steps):
            continue
        message = f"Stop against the machined end: {plan.named(face)} is raw, {plan.named(other)} is machined"
        text = f"{other} end to the stop"
        fix = Fix(f"The {other} end to the stop", set_field(f"holding:{set_up.key}", "stop", text))
        yield remark(view, "locate-on-machined-faces", message, first.key, fix=fix, set_up=set_up.key)


def _stopped(plan: Plan, first: Step) -> str | None:
    """The face that the words put at the stop, where only one can be meant."""
    text, lie = first.set_up.holding.stop, first.lie
    if not text:
        return None
    letters = {of for letter, of in plan.job.datums if text.split()[:1] == [letter]}
    if len(letters) == 1:
        face = letters.pop()
        return None if face in (lie.up, lie.down) else face
    named = [word for word in _NOW if said(text, word)]
    if len(named) != 1:
        return None
    now: str = getattr(lie, _NOW[named[0]])
    # As it lies or as the drawing has it: only where both are the same is it certain, or where the word comes from here.
    return now if now == named[0] else None


def _measures(step: Step, face: str) -> bool:
    if positions(step.fields):
        return True
    across = measured_across(step)
    return across is not None and face in (across[0], OPPOSITE[across[0]])
