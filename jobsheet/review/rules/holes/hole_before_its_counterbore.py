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
    holes = holes_of(view.reckoned)
    for chain in holes.chains:
        for step in chain.steps:
            if step.does not in ("counterbore", "countersink") or step.key in told:
                continue
            if getattr(step.fields, "hole", None) is not None or (by_tool and not _has_pilot(step)):
                continue
            if any(hole_step.does in SIZING for hole_step in chain.before(step)):
                continue
            later = next((hole_step for hole_step in chain.after(step) if hole_step.does in SIZING), None)
            if later is None:
                continue
            told.add(step.key)
            fix = None
            if later.set_up == step.set_up:
                drills = _drills(holes, step)
                numbers = ", ".join(str(hole_step.number) for hole_step in drills)
                moves = (moved_before(hole_step.key, step.key) for hole_step in drills)
                fix = Fix(f"Move {numbers} before {step.number}", in_turn(*moves))
            message = f"Drill the hole first: step {later.number} comes after its {step.does}"
            yield remark(
                view, "hole-before-its-counterbore", message, step.key, later.key, fix=fix, set_up=step.set_up
            )


def _has_pilot(step: HoleStep) -> bool:
    return any(word.casefold().startswith("pilot") for word in step.cutter.extra)


def _drills(holes: Holes, step: HoleStep) -> tuple[HoleStep, ...]:
    """The first step that makes each hole of a counterbore, in cutting order."""
    first = {}
    for chain, here in holes.by_step(step.key):
        later = next((hole_step for hole_step in chain.after(here) if hole_step.does in SIZING), None)
        if later is not None and later.set_up == step.set_up:
            first[later.key] = later
    return tuple(sorted(first.values(), key=lambda hole_step: hole_step.index))
