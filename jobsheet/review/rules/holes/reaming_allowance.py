"""Asks whether the drill leaves the reamer what it wants."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import BY_HAND
from jobsheet.review.mending.added_hole import drilled_before
from jobsheet.review.mending.at_hand import drill_near
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.held import how
from jobsheet.review.plan.hole_chains import HoleStep, holes_of
from jobsheet.review.plan.lengths import length, typed
from jobsheet.review.plan.reamer_room import drill_for, room
from jobsheet.review.rule import View, remark, rule

_HAIR = 1e-6


@rule("reaming-allowance", "Allowance for the reamer", "scrap")
def reaming_allowance(view: View) -> Iterator[Remark]:
    """What a machine reamer finds on the diameter lies outside the published range for its size.

    Because: Too little rubs; too much cuts big and rough.
    Not so: drill 15.9, ream 16
    So: drill 15.7, ream 16
    From: United States War Department, TM 1-420, page 62
    """
    told: set[str] = set()
    for chain in holes_of(view.reckoned).chains:
        for step in chain.steps:
            if step.does != "ream" or step.key in told or how(step.operation, BY_HAND):
                continue
            if any(hole_step.does == "drill" for hole_step in chain.after(step)):
                continue  # said by hole-steps-in-rising-order
            before = chain.hole_before(step)
            entered = step.fields.hole
            hole = entered.value if entered is not None else before.diameter if before is not None else None
            if hole is None or hole >= step.diameter:
                continue
            low, high = room(step.diameter)
            left = step.diameter - hole
            if low - _HAIR <= left <= high + _HAIR:
                continue
            told.add(step.key)
            message = (
                f"{length(left, view.job.units)} on the diameter for the reamer: {length(low, view.job.units)} to"
                f" {length(high, view.job.units)} is usual for {length(step.diameter, view.job.units)}"
            )
            keys = (step.key,) if before is None else (step.key, before.key)
            yield remark(
                view, "reaming-allowance", message, *keys, set_up=step.set_up, fix=_fix(view, before, step.diameter) if entered is None else None,
                others=_another(view, before, step) if entered is None else (),
            )  # fmt: skip


def _fix(view: View, before: HoleStep | None, diameter: float) -> Fix | None:
    if before is None or before.does != "drill":
        return None
    low, high = room(diameter)
    found, line = drill_near(view.job, drill_for(diameter), diameter - high, diameter - low)
    size = typed(found, view.job.units)
    return Fix(f"Step {before.number}: drill {size}", set_field(before.key, "cutter", line), (before.key,))


def _another(view: View, before: HoleStep | None, reamer: HoleStep) -> tuple[Fix, ...]:
    """A drill of its own before the reamer, where the one that is there has to stay."""
    low, high = room(reamer.diameter)
    if before is None or reamer.set_up != before.set_up or reamer.diameter - before.diameter < high:
        return ()
    found, line = drill_near(
        view.job, drill_for(reamer.diameter), reamer.diameter - high, reamer.diameter - low
    )
    texts = {"cutter": line, "at": reamer.fields.at.text, "depth": reamer.fields.depth.text}
    setting = view.reckoned.settings[reamer.key]
    mend = drilled_before(reamer.operation, setting, texts, hole=before.diameter)
    return (Fix(f"Add drill {typed(found, view.job.units)} before {reamer.number}", mend),)
