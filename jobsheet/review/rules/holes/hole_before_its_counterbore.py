"""Asks whether the hole is there for the pilot of its counterbore."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import in_turn, moved_before
from jobsheet.review.plan.hole_chains import SIZING, Holes, HoleStep, holes_of
from jobsheet.review.rule import View, remark, rule


@rule("hole-before-its-counterbore", "Hole before its counterbore", "rework")
def hole_before_its_counterbore(view: View) -> Iterator[Remark]:
    """A counterbore or countersink before the hole it belongs to. Which tools are asked is a workshop setting.

    Because: The pilot guides the tool; without a hole it wanders, and the drill then finds nothing to start in.
    Not so: counterbore 11, drill 6.6
    So: drill 6.6, counterbore 11
    From: Somta, user guide, page 33
    """
    told: set[str] = set()
    by_tool = view.reckoned.shop.counterbore_order == "by the tool"
    found = holes_of(view.reckoned)
    for chain in found.chains:
        for step in chain.steps:
            if step.does not in ("counterbore", "countersink") or step.key in told:
                continue
            if getattr(step.fields, "hole", None) is not None or (by_tool and not _has_pilot(step)):
                continue
            if any(one.does in SIZING for one in chain.before(step)):
                continue
            later = next((one for one in chain.after(step) if one.does in SIZING), None)
            if later is None:
                continue
            told.add(step.key)
            fix = None
            if later.set_up == step.set_up:
                drills = _drills(found, step)
                numbers = ", ".join(str(one.number) for one in drills)
                moves = (moved_before(one.key, step.key) for one in drills)
                fix = Fix(f"Move {numbers} before {step.number}", in_turn(*moves))
            message = f"Drill the hole first: step {later.number} comes after its {step.does}"
            yield remark(
                view, "hole-before-its-counterbore", message, step.key, later.key, fix=fix, set_up=step.set_up
            )


def _has_pilot(step: HoleStep) -> bool:
    return any(word.casefold().startswith("pilot") for word in step.cutter.extra)


def _drills(found: Holes, step: HoleStep) -> tuple[HoleStep, ...]:
    """The first step that makes each hole of a counterbore, in cutting order."""
    first = {}
    for chain, here in found.by_step(step.key):
        later = next((one for one in chain.after(here) if one.does in SIZING), None)
        if later is not None and later.set_up == step.set_up:
            first[later.key] = later
    return tuple(sorted(first.values(), key=lambda one: one.index))
