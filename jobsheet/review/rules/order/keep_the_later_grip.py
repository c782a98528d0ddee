"""Asks whether a step takes away what a later set-up holds on."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Edge, Groove, Recess
from jobsheet.review.mending.fixes import moved_after
from jobsheet.review.plan.faces import Plan, Step, plan_of
from jobsheet.review.rule import Needs, View, remark, rule

_SIDES = {"left": "left", "right": "right", "front": "near", "rear": "far"}


@rule("keep-the-later-grip", "Keep the later grip", "scrap", needs=Needs.STAGES)
def keep_the_later_grip(view: View) -> Iterator[Remark]:
    """A step removes more than half of the metal that a later set-up grips.

    The solids say it: of the face at the fixed jaw less than half is there when the set-up begins.

    Because: A step must not spoil the holding of the next.
    Not so: mill the step, then grip the side it was cut from
    So: do what grips that side, then mill the step
    From: common practice
    """
    plan = plan_of(view)
    steps = {step.key: step for step in plan.steps}
    for fact in view.facts_of("lost-contact"):
        later = steps.get(fact.key)
        if later is None:
            continue
        taking = _taking(plan, later, fact.about)
        if taking is None:
            continue
        last = plan.of(later.set_up.key)[-1]
        message = (
            f"Set-up {later.set_up.number} loses its grip: step {taking.number} leaves {fact.found * 100:.0f} % of the"
            f" {fact.about} face; do set-up {later.set_up.number} first"
        )
        fix = Fix(f"Move {taking.number} behind {last.number}", moved_after(taking.key, last.key))
        yield remark(
            view, "keep-the-later-grip", message, taking.key, later.key, fix=fix, set_up=later.set_up.key
        )


def _taking(plan: Plan, later: Step, face: str) -> Step | None:
    """The step before it that takes most out of that face."""
    steps = [
        step
        for step in plan.steps[: later.index]
        if step.set_up.key != later.set_up.key and _opens(step, face)
    ]
    return max(steps, key=lambda step: step.figure("volume") or 0.0, default=None)


def _opens(step: Step, face: str) -> bool:
    """Whether it takes metal out of that face without cutting all of a side away."""
    for sized in step.cut.shapes:
        shape = sized.shape
        if isinstance(shape, Edge) and not step.makes:
            if face in (getattr(step.lie, _SIDES[shape.side]), step.lie.up):
                return True
        elif isinstance(shape, Groove | Recess) and face in (step.lie.up, OPPOSITE[step.lie.up]):
            return True
    return False
