"""Pairs of one hole: spot, drills in rising size, reamer, its mouth, its thread; and of a hole
and the slot or pocket it lies in.
"""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.lessons.pairs import Pair
from jobsheet.model.shape import Hole
from jobsheet.operations.registry import roles
from jobsheet.review.plan.faces import Plan
from jobsheet.review.plan.hole_chains import MOUTHS, SAME, SIZING, Chain, Holes, HoleStep, Taken
from jobsheet.review.rule import View


def hole_pairs(view: View, plan: Plan, holes: Holes) -> Iterator[Pair]:
    """Of every hole, whatever order its steps stand in."""
    by_tool = view.reckoned.shop.counterbore_order == "by the tool"
    for chain in holes.chains:
        for step in chain.steps:
            for other in chain.steps:
                rule = _rule(chain, step, other, by_tool=by_tool)
                if rule:
                    yield Pair(step.key, other.key, rule)
        yield from _in_its_slot(plan, holes, chain)


def _rule(chain: Chain, hole_step: HoleStep, other: HoleStep, *, by_tool: bool) -> str:
    """The rule by which one step of a hole comes before another; nothing where none does."""
    if hole_step.key == other.key:
        return ""
    if hole_step.does == "spot":
        if other.does == "drill" or (other.does == "plunge" and not _seat(other)):
            return "spot-before-drilling"
        return "chamfer-before-tap" if other.does == "tap" else ""
    if other.does == "tap":
        if hole_step.does in SIZING:
            return "tap-drill-before-tap"
        return "chamfer-before-tap" if hole_step.does in MOUTHS else ""
    if hole_step.does == "plunge" and _seat(hole_step) and _begins(chain, other):
        return "flat-before-drilling-a-slope"
    if hole_step.does in SIZING and other.does in SIZING:
        return _rising(hole_step, other)
    if hole_step.does in ("drill", "plunge", "bore") and other.does in ("counterbore", "countersink"):
        return _mouth(chain, other, by_tool=by_tool)
    return ""


def _seat(plunged: HoleStep) -> bool:
    """Whether an end mill only makes a flat: it goes no deeper than it is wide."""
    return plunged.depth is not None and plunged.depth < plunged.diameter - SAME


def _begins(chain: Chain, step: HoleStep) -> bool:
    """Whether it is the first tool of a hole that needs something to start in:
    the spot, without one the drills.
    """
    return step.does == "spot" or (
        step.does == "drill" and not any(hole_step.does == "spot" for hole_step in chain.steps)
    )


def _rising(hole_step: HoleStep, other: HoleStep) -> str:
    """The smaller before the larger; a reamer after everything that makes its hole. A
    smaller one that goes deeper is free.
    """
    if other.does == "ream" and hole_step.does != "ream":
        return "hole-steps-in-rising-order" if hole_step.diameter <= other.diameter + SAME else ""
    if (
        hole_step.does != "ream"
        and hole_step.diameter < other.diameter - SAME
        and other.as_deep_as(hole_step)
    ):
        return "hole-steps-in-rising-order"
    return ""


def _mouth(chain: Chain, mouth: HoleStep, *, by_tool: bool) -> str:
    """A mouth wants its hole first; by the tool, one without a pilot may be the
    spot itself where there is no other.
    """
    if getattr(mouth.fields, "hole", None) is not None:
        return ""
    guided = any(word.casefold().startswith("pilot") for word in mouth.cutter.extra)
    spotted = any(step.does == "spot" for step in chain.steps)
    return "hole-before-its-counterbore" if guided or spotted or not by_tool else ""


# --- a hole and the slot, pocket or step around it ---


def _in_its_slot(plan: Plan, holes: Holes, chain: Chain) -> Iterator[Pair]:
    for taken in holes.taken:
        if taken.face != chain.face:
            continue
        inside = taken.inside(chain.at)
        widest = max((step.diameter for step in chain.steps), default=0.0)
        if inside > 0:
            lets_in = _lets_in(plan, taken, chain)
            for step in chain.steps:
                if lets_in:
                    yield Pair(step.key, taken.operation.key, _entry(plan, taken))
                else:
                    yield from _in_its_floor(taken, chain, step)
        elif inside > -widest / 2 + SAME:
            yield from _beside(taken, chain)


def _lets_in(plan: Plan, taken: Taken, chain: Chain) -> bool:
    """Whether the hole goes with the slot: it lets the cutter in or drills it
    out. Else it lies in the slot's floor.
    """
    if any(step.does in ("tap", "ream", "counterbore", "countersink", "bore") for step in chain.steps):
        return False
    step = plan.steps[taken.index]
    depths = [sized.depth for sized in step.cut.shapes if not isinstance(sized.shape, Hole)]
    if None in depths or max((depth or 0.0 for depth in depths), default=0.0) >= step.lie.size[2] - SAME:
        return True
    deepest = [step.depth for step in chain.steps]
    if None in deepest:
        return False
    first = min(step.index for step in chain.steps)
    return (
        first < taken.index
        and max(one or 0.0 for one in deepest) <= max(depth or 0.0 for depth in depths) + SAME
    )


def _entry(plan: Plan, taken: Taken) -> str:
    return "entry-for-a-closed-slot" if plan.steps[taken.index].roles.closed else "drill-out-before-deep-slot"


def _in_its_floor(taken: Taken, chain: Chain, hole_step: HoleStep) -> Iterator[Pair]:
    """A thread and a mouth come after the floor that they start in, and so does what its plan
    counts from there; a plain hole through may come either way. The slot never comes between a spot
    and its drill: the spot goes with it.
    """
    spotted = any(two.does == "spot" for two in chain.steps)
    if hole_step.does in ("tap", "counterbore", "countersink"):
        yield Pair(
            taken.operation.key,
            hole_step.key,
            "tap-after-the-last-cut" if hole_step.does == "tap" else "face-before-holes",
        )
    elif hole_step.index > taken.index and (hole_step.depth is not None or spotted):
        yield Pair(taken.operation.key, hole_step.key, "face-before-holes")
    elif hole_step.index < taken.index and spotted:
        yield Pair(hole_step.key, taken.operation.key, "drilled-before-its-spot-goes")


def _beside(taken: Taken, chain: Chain) -> Iterator[Pair]:
    """A hole that the slot opens from the side: drilled while there is metal
    all round; a thread is cut last.
    """
    for step in chain.steps:
        if step.does == "tap":
            yield Pair(taken.operation.key, step.key, "tap-after-the-last-cut")
        elif roles(step.operation).hole in ("spot", "drill"):
            yield Pair(step.key, taken.operation.key, "drill-before-the-slot-it-meets")
