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
    plays, before = holding_roles(set_up), [one for one in plan.steps[: steps[0].index] if one.cuts]
    if plays.screwed:
        drills = [one for one in before if one.roles.hole == "drill"]
        yield from (Pair(one.key, steps[0].key, "holes-before-their-screws") for one in drills)
    if plays.round and not plays.turns and before and before[-1].lie.up != steps[0].lie.up:
        levels = [one for one in steps if does(one.operation, "square up") or measures(one)]
        yield from (Pair(before[-1].key, one.key, "first-cut-levelled") for one in levels[:1])


def _cuts(steps: tuple[Step, ...]) -> list[Step]:
    return [one for one in steps if one.cuts]


def _prepares(step: Step, steps: tuple[Step, ...]) -> Iterator[Pair]:
    """What has to be done before the first cut or the first place."""
    if does(step.operation, "clamp") and any(one.index < step.index for one in _cuts(steps)):
        yield from _between(step, steps)
    elif does(step.operation, "clamp"):
        for one in steps:
            if one.cuts or finds_zero(one):
                rule = "zero-again-after-taking-out" if finds_zero(one) else "clamped-before-the-cut"
                yield Pair(step.key, one.key, rule)
    if does(step.operation, "check vice"):
        yield from (Pair(step.key, one.key, "vice-checked-for-the-limits") for one in _cuts(steps))
    if does(step.operation, "mark out"):
        yield from (Pair(step.key, one.key, "find-the-zero-here") for one in _cuts(steps) if one.roles.hole)
    if does(step.operation, "saw") or step.roles.beside == "saw":
        blocks = [one for one in _cuts(steps) if one.roles.mills in ("flat", "wall", "recess")]
        yield from (Pair(step.key, one.key, "saw-the-bulk-first") for one in blocks if one.index > step.index)


def _holds_loose(step: Step, steps: tuple[Step, ...], holes: Holes) -> Iterator[Pair]:
    """The loose piece is held before the cut that frees it; where screws hold it, their holes come first."""
    if not does(step.operation, "hold loose piece"):
        return
    loose = {one.key for one in _cuts(steps) if one.roles.between_walls and one.index > step.index}
    yield from (Pair(step.key, key, "hold-the-slug") for key in sorted(loose))
    if getattr(step.fields, "screws", None) is None:
        return
    around = [one for one in holes.taken if one.operation.key in loose]
    for chain in holes.chains:
        if any(one.inside(chain.at) > 0 for one in around if one.face == chain.face):
            here = (one for one in chain.steps if one.index < step.index)
            yield from (Pair(one.key, step.key, "hold-the-slug") for one in here)


def _finds(step: Step, steps: tuple[Step, ...]) -> Iterator[Pair]:
    """A zero before what counts from it, up to where it is found again; what makes
    it worth nothing before it is found.
    """
    if not finds_zero(step):
        return
    finders = [one.index for one in steps if finds_zero(one)]
    again = next((index for index in finders if index > step.index), None)
    for one in steps:
        if (again is not None and one.index > again) or (one.index < step.index != finders[0]):
            continue
        if positions(one.fields):
            yield Pair(step.key, one.key, "find-the-zero-here")
        elif one.roles.mills == "wall" and one.index > step.index:
            yield Pair(step.key, one.key, "zero-before-its-cut")
    for one in steps:
        if one.index < step.index and does(one.operation, *_LOSES):
            head = does(one.operation, "move head")
            rule = "refind-zero-after-a-head-move" if head else "zero-again-after-taking-out"
            yield Pair(one.key, step.key, rule)
            earlier = [two for two in steps if two.index < one.index and positions(two.fields)]
            yield from (Pair(two.key, one.key, rule) for two in earlier)


def _changes(step: Step, steps: tuple[Step, ...]) -> Iterator[Pair]:
    """Each cut stays on its own side of a step that changes what holds the work, or how the head stands."""
    if does(step.operation, "change holding"):
        for one in steps:
            if does(one.operation, "hold loose piece"):
                yield _side(step, one)
        yield from _between(step, steps)
    if does(step.operation, "take out"):
        for one in steps:
            if one.index < step.index and measures(one):
                yield Pair(one.key, step.key, "measure-before-unclamping")
        yield from _between(step, steps)
    if does(step.operation, "tilt head"):
        for one in _cuts(steps):
            if how(one.operation, TILTED):
                yield Pair(step.key, one.key, "tram-after-a-tilted-head")
    if trams(step):
        for one in steps:
            if how(one.operation, TILTED) or does(one.operation, "tilt head"):
                yield Pair(one.key, step.key, "tram-after-a-tilted-head")
            elif one.cuts and one.index > step.index:
                yield Pair(step.key, one.key, "tram-before-a-fine-face")


def _between(step: Step, steps: tuple[Step, ...]) -> Iterator[Pair]:
    """The cuts before a step that changes the hold, and those behind it."""
    yield from (_side(step, one) for one in _cuts(steps) if one is not step)


def _side(step: Step, one: Step) -> Pair:
    sides = (one.key, step.key) if one.index < step.index else (step.key, one.key)
    return Pair(*sides, "each-cut-in-its-own-hold")


# --- what follows a cut ---


def _follows(step: Step, steps: tuple[Step, ...], plan: Plan) -> Iterator[Pair]:
    if not step.cuts and measures(step):
        yield from (
            Pair(one.key, step.key, "measured-after-it-is-cut") for one in _measured(step, steps, plan)
        )
    if does(step.operation, "cool"):
        for one in steps:
            if one.cuts and one.index < step.index:
                yield Pair(one.key, step.key, "cool-before-measuring")
            elif measures(one) and not one.cuts and one.index > step.index:
                yield Pair(step.key, one.key, "cool-before-measuring")
    if does(step.operation, "deburr"):
        before = [one for one in _cuts(steps) if one.index < step.index and not how(one.operation, BROKEN)]
        yield from (Pair(one.key, step.key, "deburr-after-last-cut") for one in before)
        if not any(one.cuts for one in steps if one.index < step.index):
            yield from (Pair(step.key, one.key, "burrs-off-before-the-next-hold") for one in _cuts(steps))
    if does(step.operation, "mark"):
        last = [one for one in plan.steps if step.lie.up in one.makes]
        yield from (Pair(one.key, step.key, "mark-after-the-last-cut") for one in last)
    if does(step.operation, "clean"):
        taps = [one for one in steps if one.roles.hole == "tap" and one.index > step.index]
        drilled = {place.text for one in taps for place in one.fields.at.points}
        for one in taps:
            yield Pair(step.key, one.key, "clean-out-before-tapping")
        for one in _cuts(steps):
            here = one.roles.hole in ("drill", "plunge") and one.index < step.index
            if here and any(place.text in drilled for place in one.fields.at.points):
                yield Pair(one.key, step.key, "clean-out-before-tapping")


def _last_deburring(plan: Plan) -> Iterator[Pair]:
    """The last deburring of the job comes after every cut that leaves a burr, and that no
    deburring of its own set-up follows.
    """
    deburrs = [one for one in plan.steps if does(one.operation, "deburr")]
    chamfered = any(one.roles.mills == "edge" for one in plan.steps)
    if not deburrs or chamfered or not any(one.cuts and one.index < deburrs[-1].index for one in plan.steps):
        return
    for one in plan.steps:
        burr = one.cuts and one.roles.hole not in _CLEAN and not how(one.operation, BROKEN)
        own = any(two.set_up.key == one.set_up.key and two.index > one.index for two in deburrs)
        if burr and not own:
            yield Pair(one.key, deburrs[-1].key, "deburr-after-last-cut")


def _measured(step: Step, steps: tuple[Step, ...], plan: Plan) -> list[Step]:
    """The cuts whose sizes a step measures: those of its own size, else those
    with limits, else all of its set-up.
    """
    size = getattr(step.fields, "measure", None)
    made = [one for one in _cuts(plan.steps) if getattr(one.fields, "measure", None) is not None]
    if size is not None and size.nominal:
        same = [one for one in made if abs(one.fields.measure.nominal - size.nominal) < SAME]
        return same or [one for one in _cuts(steps) if one.index < step.index and not one.roles.hole]
    limited = [one for one in _cuts(steps) if width_of_limits(one) is not None]
    if limited:
        return limited
    return [one for one in made if one.index < step.index] or [
        one for one in _cuts(steps) if one.index < step.index
    ]
