"""Asks whether a drill is started where nothing guides it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.tools.cutter_words import line_has
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import BUSH
from jobsheet.operations.registry import roles
from jobsheet.review.mending.added_hole import spotted_before
from jobsheet.review.mending.fixes import moved_after, moved_before
from jobsheet.review.plan.as_asked import misplaced
from jobsheet.review.plan.held import how
from jobsheet.review.plan.hole_chains import MOUTHS, WIDER, Chain, Holes, HoleStep, holes_of
from jobsheet.review.rule import View, remark, rule

#: A stub drill needs no spot in a hole of no more than so many diameters (common practice, no source).
SHORT = 2.0


@rule("spot-before-drilling", "Spot before drilling", "scrap")
def spot_before_drilling(view: View) -> Iterator[Remark]:
    """A drill of ordinary length walks on a plain face before it bites.

    A stub drill in a shallow hole, a drill bush, a hole that is there and metal that is cut away later need no spot.

    Because: A long drill walks before it bites, and the hole is then where it should not be.
    Not so: drill, spot
    So: spot, drill
    From: Cutting Tool Engineering, Get it straight; common practice
    """
    holes = holes_of(view.reckoned)
    told: set[str] = set(misplaced(view))
    for chain in holes.chains:
        for step in chain.steps:
            if step.key in told or not _asked(view, holes, chain, step):
                continue
            told.add(step.key)
            later = _later_spot(holes, chain, step)
            if later is not None:
                message = f"Spot before drilling: step {later.number} spots these places only afterwards"
                fix = Fix(f"Move {later.number} before {step.number}", moved_before(later.key, step.key))
                other: Fix | None = Fix(
                    f"Move {step.number} behind {later.number}", moved_after(step.key, later.key)
                )
            else:
                message = "Spot before drilling: the drill will wander"
                fix, other = _added(view, chain, step), None
            yield remark(
                view,
                "spot-before-drilling",
                message,
                step.key,
                fix=fix,
                others=(other,) if other else (),
                set_up=step.set_up,
            )


def _later_spot(holes: Holes, chain: Chain, step: HoleStep) -> HoleStep | None:
    """A step of the same set-up that spots every place of this drill, but only afterwards."""
    for hole_step in chain.after(step):
        if hole_step.does == "spot" and hole_step.set_up == step.set_up:
            spotted = {other.at for other, _ in holes.by_step(hole_step.key)}
            if all(here.at in spotted for here, _ in holes.by_step(step.key)):
                return hole_step
    return None


def _asked(view: View, holes: Holes, chain: Chain, step: HoleStep) -> bool:
    """Whether this step is a twist drill that begins on a plain face."""
    if step.does != "drill" or roles(step.operation).opens or chain.before(step):
        return False
    deep = step.depth if step.depth is not None else view.reckoned.settings[step.key].thickness
    if line_has(step.cutter, "stub", "short") and deep <= SHORT * step.diameter * (1 + 1e-9):
        return False
    return not how(step.operation, BUSH) and not holes.cut_away_later(chain, step)


def _added(view: View, chain: Chain, step: HoleStep) -> Fix:
    """A new spot before the drill; where the hole is tapped and nothing else gives it a mouth, as wide as the thread's chamfer."""
    mouths = any(hole_step.does in MOUTHS for hole_step in chain.steps)
    tap = next((hole_step for hole_step in chain.after(step) if hole_step.does == "tap"), None)
    wide = tap.diameter + WIDER if tap is not None and not mouths else step.diameter
    mend, _ = spotted_before(view.job, step.key, step.fields.at.text, wide)
    return Fix(f"Add a spot before {step.number}", mend)
