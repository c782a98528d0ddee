"""Pairs of a set-up: clamped and found before the cut, measured, cleaned and deburred
behind it, each hold with its own cuts.
"""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.lessons.pairs import Pair
from jobsheet.model.job import SetUp
from jobsheet.operations.manners import BROKEN, TILTED
from jobsheet.review.plan.faces import Plan, Step, finds_zero, positions, trams, width_of_limits
from jobsheet.review.plan.gauges import measures
from jobsheet.review.plan.held import does, holding_roles, how
from jobsheet.review.plan.hole_chains import Holes

#: Sizes that are the same [m].
SAME = 1e-6
#: What is done to a hole without a burr that is left for a file, as the review has it.
_CLEAN = ("ream", "tap", "countersink")
#: What makes the dials' zero worth nothing until it is found again.
_LOSES = ("take out", "put back", "move head", "knock", "square up", "check vice")


def bench_pairs(plan: Plan, holes: Holes) -> Iterator[Pair]:
    """Of every set-up."""
    for set_up, steps in plan.groups():
        yield from _hold_needs(plan, set_up, steps)
        for step in steps:
            yield from _prepares(step, steps)
            yield from _holds_loose(step, steps, holes)
            yield from _finds(step, steps)
            yield from _changes(step, steps)
            yield from _follows(step, steps, plan)
    yield from _last_deburring(plan)


def _hold_needs(plan: Plan, set_up: SetUp, steps: tuple[Step, ...]) -> Iterator[Pair]:
    """Screws want the holes that they go through, and round work in a vee the cut by which it is levelled."""
    plays, before = holding_roles(set_up), [step for step in plan.steps[: steps[0].index] if step.cuts]
    if plays.screwed:
        drills = [step for step in before if step.roles.hole == "drill"]
        yield from (Pair(step.key, steps[0].key, "holes-before-their-screws") for step in drills)
    if plays.round and not plays.turns and before and before[-1].lie.up != steps[0].lie.up:
        levels = [step for step in steps if does(step.operation, "square up") or measures(step)]
        yield from (Pair(before[-1].key, step.key, "first-cut-levelled") for step in levels[:1])


def _cuts(steps: tuple[Step, ...]) -> list[Step]:
    return [step for step in steps if step.cuts]


def _prepares(step: Step, steps: tuple[Step, ...]) -> Iterator[Pair]:
    """What has to be done before the first cut or the first place."""
    if does(step.operation, "clamp") and any(other.index < step.index for other in _cuts(steps)):
        yield from _between(step, steps)
    elif does(step.operation, "clamp"):
        for other in steps:
            if other.cuts or finds_zero(other):
                rule = "zero-again-after-taking-out" if finds_zero(other) else "clamped-before-the-cut"
                yield Pair(step.key, other.key, rule)
    if does(step.operation, "check vice"):
        yield from (Pair(step.key, other.key, "vice-checked-for-the-limits") for other in _cuts(steps))
    if does(step.operation, "mark out"):
        yield from (
            Pair(step.key, other.key, "find-the-zero-here") for other in _cuts(steps) if other.roles.hole
        )
    if does(step.operation, "saw") or step.roles.beside == "saw":
        blocks = [other for other in _cuts(steps) if other.roles.mills in ("flat", "wall", "recess")]
        yield from (
            Pair(step.key, block.key, "saw-the-bulk-first") for block in blocks if block.index > step.index
        )


def _holds_loose(step: Step, steps: tuple[Step, ...], holes: Holes) -> Iterator[Pair]:
    """The loose piece is held before the cut that frees it; where screws hold it, their holes come first."""
    if not does(step.operation, "hold loose piece"):
        return
    loose = {other.key for other in _cuts(steps) if other.roles.between_walls and other.index > step.index}
    yield from (Pair(step.key, key, "hold-the-slug") for key in sorted(loose))
    if getattr(step.fields, "screws", None) is None:
        return
    around = [taken for taken in holes.taken if taken.operation.key in loose]
    for chain in holes.chains:
        if any(taken.inside(chain.at) > 0 for taken in around if taken.face == chain.face):
            here = (hole_step for hole_step in chain.steps if hole_step.index < step.index)
            yield from (Pair(hole_step.key, step.key, "hold-the-slug") for hole_step in here)


def _finds(step: Step, steps: tuple[Step, ...]) -> Iterator[Pair]:
    """A zero before what counts from it, up to where it is found again; what makes
    it worth nothing before it is found.
    """
    if not finds_zero(step):
        return
    finders = [other.index for other in steps if finds_zero(other)]
    again = next((index for index in finders if index > step.index), None)
    for other in steps:
        if (again is not None and other.index > again) or (other.index < step.index != finders[0]):
            continue
        if positions(other.fields):
            yield Pair(step.key, other.key, "find-the-zero-here")
        elif other.roles.mills == "wall" and other.index > step.index:
            yield Pair(step.key, other.key, "zero-before-its-cut")
    for other in steps:
        if other.index < step.index and does(other.operation, *_LOSES):
            head = does(other.operation, "move head")
            rule = "refind-zero-after-a-head-move" if head else "zero-again-after-taking-out"
            yield Pair(other.key, step.key, rule)
            earlier = [two for two in steps if two.index < other.index and positions(two.fields)]
            yield from (Pair(two.key, other.key, rule) for two in earlier)


def _changes(step: Step, steps: tuple[Step, ...]) -> Iterator[Pair]:
    """Each cut stays on its own side of a step that changes what holds the work, or how the head stands."""
    if does(step.operation, "change holding"):
        for other in steps:
            if does(other.operation, "hold loose piece"):
                yield _side(step, other)
        yield from _between(step, steps)
    if does(step.operation, "take out"):
        for other in steps:
            if other.index < step.index and measures(other):
                yield Pair(other.key, step.key, "measure-before-unclamping")
        yield from _between(step, steps)
    if does(step.operation, "tilt head"):
        for other in _cuts(steps):
            if how(other.operation, TILTED):
                yield Pair(step.key, other.key, "tram-after-a-tilted-head")
    if trams(step):
        for other in steps:
            if how(other.operation, TILTED) or does(other.operation, "tilt head"):
                yield Pair(other.key, step.key, "tram-after-a-tilted-head")
            elif other.cuts and other.index > step.index:
                yield Pair(step.key, other.key, "tram-before-a-fine-face")


def _between(step: Step, steps: tuple[Step, ...]) -> Iterator[Pair]:
    """The cuts before a step that changes the hold, and those behind it."""
    yield from (_side(step, other) for other in _cuts(steps) if other is not step)


def _side(step: Step, one: Step) -> Pair:
    sides = (one.key, step.key) if one.index < step.index else (step.key, one.key)
    return Pair(*sides, "each-cut-in-its-own-hold")


# --- what follows a cut ---


def _follows(step: Step, steps: tuple[Step, ...], plan: Plan) -> Iterator[Pair]:
    if not step.cuts and measures(step):
        yield from (
            Pair(other.key, step.key, "measured-after-it-is-cut") for other in _measured(step, steps, plan)
        )
    if does(step.operation, "cool"):
        for other in steps:
            if other.cuts and other.index < step.index:
                yield Pair(other.key, step.key, "cool-before-measuring")
            elif measures(other) and not other.cuts and other.index > step.index:
                yield Pair(step.key, other.key, "cool-before-measuring")
    if does(step.operation, "deburr"):
        before = [
            other for other in _cuts(steps) if other.index < step.index and not how(other.operation, BROKEN)
        ]
        yield from (Pair(other.key, step.key, "deburr-after-last-cut") for other in before)
        if not any(other.cuts for other in steps if other.index < step.index):
            yield from (Pair(step.key, other.key, "burrs-off-before-the-next-hold") for other in _cuts(steps))
    if does(step.operation, "mark"):
        last = [other for other in plan.steps if step.lie.up in other.makes]
        yield from (Pair(other.key, step.key, "mark-after-the-last-cut") for other in last)
    if does(step.operation, "clean"):
        taps = [other for other in steps if other.roles.hole == "tap" and other.index > step.index]
        drilled = {place.text for tap in taps for place in tap.fields.at.points}
        for tap in taps:
            yield Pair(step.key, tap.key, "clean-out-before-tapping")
        for other in _cuts(steps):
            here = other.roles.hole in ("drill", "plunge") and other.index < step.index
            if here and any(place.text in drilled for place in other.fields.at.points):
                yield Pair(other.key, step.key, "clean-out-before-tapping")


def _last_deburring(plan: Plan) -> Iterator[Pair]:
    """The last deburring of the job comes after every cut that leaves a burr, and that no
    deburring of its own set-up follows.
    """
    deburrs = [step for step in plan.steps if does(step.operation, "deburr")]
    chamfered = any(step.roles.mills == "edge" for step in plan.steps)
    if (
        not deburrs
        or chamfered
        or not any(step.cuts and step.index < deburrs[-1].index for step in plan.steps)
    ):
        return
    for step in plan.steps:
        burr = step.cuts and step.roles.hole not in _CLEAN and not how(step.operation, BROKEN)
        own = any(two.set_up.key == step.set_up.key and two.index > step.index for two in deburrs)
        if burr and not own:
            yield Pair(step.key, deburrs[-1].key, "deburr-after-last-cut")


def _measured(step: Step, steps: tuple[Step, ...], plan: Plan) -> list[Step]:
    """The cuts whose sizes a step measures: those of its own size, else those
    with limits, else all of its set-up.
    """
    size = getattr(step.fields, "measure", None)
    made = [other for other in _cuts(plan.steps) if getattr(other.fields, "measure", None) is not None]
    if size is not None and size.nominal:
        same = [other for other in made if abs(other.fields.measure.nominal - size.nominal) < SAME]
        return same or [other for other in _cuts(steps) if other.index < step.index and not other.roles.hole]
    limited = [other for other in _cuts(steps) if width_of_limits(other) is not None]
    if limited:
        return limited
    return [other for other in made if other.index < step.index] or [
        other for other in _cuts(steps) if other.index < step.index
    ]
