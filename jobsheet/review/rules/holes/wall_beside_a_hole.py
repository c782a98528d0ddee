"""Asks whether enough wall stays between a hole and the edge of the finished work, or the next hole."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.finished.settled import AXES
from jobsheet.model.lying import Box
from jobsheet.model.remark import Remark
from jobsheet.operations.manners import ON_PURPOSE, PLUGGED
from jobsheet.review.plan.as_asked import as_asked
from jobsheet.review.plan.held import how
from jobsheet.review.plan.hole_chains import SAME, SIZING, Chain, Holes, HoleStep, holes_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule
from jobsheet.stages.checks import THIN

#: The wall beside a hole, as a share of its diameter (common practice, no source).
SHARE = 0.5
_BY_HAND = "move the hole, or write it as a line of the drawing where it is meant so"


@rule("wall-beside-a-hole", "Wall beside a hole", "rework")
def wall_beside_a_hole(view: View) -> Iterator[Remark]:
    """Less wall than half its diameter stays between a hole and an edge of the finished work, or than half the smaller one to the next hole.

    Quiet where the drawing asks for the hole there, where the metal around it goes later, where holes are meant to meet, and below a
    millimetre, which has a remark of its own.

    Because: The wall bulges as the drill or the tap presses, and breaks out under load.
    Not so: drill 10 with its centre 8 from the edge
    So: drill 10 with its centre 10 or more from the edge
    From: common practice
    """
    found = holes_of(view.reckoned)
    if not found.course.cuts or found.course.outline is not None:
        return
    box = found.course.cuts[-1].after.box
    asked = as_asked(view)
    drawn = (
        {key for hole_found in asked.found.holes if hole_found.state == "made" for key in hole_found.steps}
        if asked
        else set()
    )
    told: set[str] = set()
    holes = [(chain, largest) for chain in found.chains if (largest := _largest(chain)) is not None]
    for chain, largest in holes:
        wall = _wall(chain, box) - largest.diameter / 2
        if not THIN <= wall < SHARE * largest.diameter - 1e-6 or largest.key in told | drawn:
            continue
        if found.cut_away_later(chain, largest):
            continue
        told.add(largest.key)
        units = view.job.units
        message = f"{length(wall, units)} of wall stays beside this hole of {length(largest.diameter, units)}, less than half of it: check the place"
        yield remark(
            view, "wall-beside-a-hole", message, largest.key, set_up=largest.set_up, by_hand=_BY_HAND
        )
    yield from _between(view, found, holes, told | drawn)


def _between(
    view: View, found: Holes, holes: list[tuple[Chain, HoleStep]], told: set[str]
) -> Iterator[Remark]:
    """Holes of one face with little between them, once for each step that makes the second of them."""
    for wall, (chain, hole_step), (other, later) in _near(holes):
        smaller = min(later.diameter, hole_step.diameter)
        if not THIN <= wall < SHARE * smaller - 1e-6 or later.key in told:
            continue
        if found.cut_away_later(chain, hole_step) or found.cut_away_later(other, later):
            continue
        if any(how(step.operation, PLUGGED, ON_PURPOSE) for step in (later, hole_step)):
            continue
        told.add(later.key)
        units = view.job.units
        both = (
            f"two holes of {length(smaller, units)}"
            if abs(later.diameter - hole_step.diameter) < SAME
            else f"the holes of {length(hole_step.diameter, units)} and {length(later.diameter, units)}"
        )
        yield remark(
            view, "wall-beside-a-hole",
            f"{length(wall, units)} of wall stays between {both}, less than half of the smaller one: check the places",
            later.key, *([hole_step.key] if hole_step.key != later.key else []), set_up=later.set_up, by_hand=_BY_HAND,
        )  # fmt: skip


def _near(
    holes: list[tuple[Chain, HoleStep]],
) -> Iterator[tuple[float, tuple[Chain, HoleStep], tuple[Chain, HoleStep]]]:
    """Pairs of holes in one face that may be too near, with the wall between them [m]; of a pair the one that is made first stands first.

    Those that lie further apart along an axis than any wall asked are never looked at: a plate can have hundreds.
    """
    in_order = sorted(holes, key=lambda hole: (hole[0].face, hole[0].at[0]))
    widest = max((step.diameter for _, step in holes), default=0.0)
    for index, (chain, hole_step) in enumerate(in_order):
        reach = (hole_step.diameter + widest) / 2 + SHARE * hole_step.diameter
        for other, step in in_order[index + 1 :]:
            if other.face != chain.face or other.at[0] - chain.at[0] > reach:
                break
            if abs(other.at[1] - chain.at[1]) > reach:
                continue
            wall = math.dist(chain.at, other.at) - (hole_step.diameter + step.diameter) / 2
            pair = ((chain, hole_step), (other, step))
            first, second = pair if hole_step.index <= step.index else pair[::-1]
            yield wall, first, second


def _largest(chain: Chain) -> HoleStep | None:
    """The step that leaves a hole as wide as it gets; None of a place that is only spotted or tapped."""
    made = [step for step in chain.steps if step.does in SIZING]
    return max(made, key=lambda step: step.diameter, default=None)


def _wall(chain: Chain, box: Box) -> float:
    """From the middle of a hole to the nearest edge of its face [m]."""
    spans = [box[axis] for axis in AXES[chain.face]]
    return min(min(at - low, high - at) for at, (low, high) in zip(chain.at, spans, strict=True))
