"""Pairs of faces: rough before finish, a face before what is measured from it, held by it or cut into it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.lessons.pairs import Pair
from jobsheet.model.lying import OPPOSITE
from jobsheet.operations.manners import BROKEN, TO_SIZE
from jobsheet.review.plan.cut_again import off
from jobsheet.review.plan.cuts import layer_of
from jobsheet.review.plan.faces import (
    AS_BOUGHT,
    MACHINED,
    Plan,
    Step,
    finds_zero,
    in_vice,
    measured_across,
    positions,
    zero_faces,
)
from jobsheet.review.plan.held import fact, how
from jobsheet.review.plan.hole_chains import Holes
from jobsheet.review.plan.rough_and_finish import close, finishes, only_wall
from jobsheet.review.plan.shoulders import shoulders
from jobsheet.review.rule import View

#: A step whose chips are so many times those of the finishing pass is roughing (the
#: row of its rule in the reference).
TIMES = 10
#: What comes before a finishing pass takes at least so many times as much (as the review has it).
TWICE = 2.0
#: A size this near to a sum of planned widths is that sum: what is left for the last pass lies between [m].
NEAR = 0.5e-3
#: Amounts that are the same [m].
SAME = 1e-7
#: The largest face is begun with where it is over so many times as large as the other
#: (the review's own rule has twice).
LARGER = 2


def face_pairs(view: View, plan: Plan, holes: Holes) -> Iterator[Pair]:
    """Of every face that is machined in the job."""
    for face in plan.made:
        making = [plan.steps[index] for index in plan.made[face]]
        yield from _passes(making, face, view.reckoned.shop.most_finish)
        for step in plan.steps:
            rule = _uses(plan, step, face)
            if rule and not any(step is other for other in making):
                yield from (Pair(other.key, step.key, rule) for other in making)
    yield from _cut_into(plan, holes)
    yield from _shoulders(plan)
    yield from _walls(plan)
    yield from _close_ones(view, plan)
    yield from _best_face(plan)


def _passes(making: list[Step], face: str, most: float) -> Iterator[Pair]:
    """Of two passes over one face the one with the size comes last, or the one to the measured size, or after
    which its edges are broken, or one as thin as a finishing pass, `most` [m], where the other takes twice as
    much. Two roughing passes are free.
    """
    for step in making:
        for other in making:
            (said, thick), (asked, thin) = _finish(step, face), _finish(other, face)
            if said < asked or (said == asked and thin <= most + SAME and thick >= TWICE * thin - SAME > 0):
                yield Pair(step.key, other.key, "rough-before-finish")


def _finish(step: Step, face: str) -> tuple[tuple[bool, bool, bool], float]:
    """How much says that a pass is the last one, and how thick it is [m]."""
    sized = getattr(step.fields, "measure", None) is not None
    leaves = getattr(step.fields, "leave", None)
    thick = layer_of(step) or 0.0
    if leaves is not None:
        thick = leaves.value
    elif step.roles.mills == "wall":
        thick = off(step, face)
    return (sized, how(step.operation, TO_SIZE), how(step.operation, BROKEN)), thick


def _uses(plan: Plan, step: Step, face: str) -> str:
    """The rule by which a step needs a face that is machined in this job; nothing where it does not."""
    across = measured_across(step)
    if across is not None and across[0] == face and not _circular(plan, step, face):
        return "face-before-its-use"
    if finds_zero(step) and face in zero_faces(step) and getattr(step.fields, "inside", None) is None:
        placed = any(positions(other.fields) for other in plan.of(step.set_up.key))
        return "face-before-its-use" if placed else ""
    if plan.of(step.set_up.key)[0].index != step.index or plan.state(face, step.index) != MACHINED:
        return _corner(step, face)
    return _holds(step, face) or _corner(step, face)


def _circular(plan: Plan, step: Step, face: str) -> bool:
    """Whether each of two faces is measured from the other: then only the hand knows which was first."""
    made = (plan.steps[index] for index in plan.made.get(face, ()))
    return any((across := measured_across(other)) is not None and across[0] in step.makes for other in made)


def _holds(step: Step, face: str) -> str:
    """How a set-up, by its first step, holds on a face that is there by then; nothing where it does not."""
    set_up, lie = step.set_up, step.lie
    if in_vice(set_up, lie):
        if face == set_up.fixed_jaw:
            return "machined-face-to-fixed-jaw"
        if face == OPPOSITE[set_up.fixed_jaw]:
            if lie.size[2] > max(lie.size[:2]):
                return "sides-before-ends"
            evened = fact(set_up, "bar") or fact(set_up, "jaws") in ("soft", "vee")
            return "" if evened or fact(set_up, "base") == "swivel" else "bar-at-the-moving-jaw"
    if face == lie.down:
        return "face-before-its-use"
    side = fact(set_up, "stop")
    if side in ("left", "right") and getattr(lie, side) == face:
        return "locate-on-machined-faces"
    return ""


def _corner(step: Step, face: str) -> str:
    """A chamfer wants the faces that meet at it, a shoulder the end that its width counts from."""
    if step.roles.mills == "edge":
        lie = step.lie
        one_only = step.fields.edges == "one edge"
        faces = {lie.up} if one_only else {lie.up, lie.left, lie.right, lie.near, lie.far}
        return "chamfer-after-both-faces" if face in faces else ""
    if any(side == face for side, _ in shoulders(step)):
        return "shoulder-after-its-end"
    return ""


def _shoulders(plan: Plan) -> Iterator[Pair]:
    """A size across what stands between two shoulders is made by the step that names it, so
    that the other one is there by then.
    """
    for step in plan.steps:
        size = getattr(step.fields, "measure", None)
        if size is None:
            continue
        for face, width in shoulders(step):
            span = step.lie.size[0 if face in (step.lie.left, step.lie.right) else 1]
            for other in plan.steps:
                wide = [one for side, one in shoulders(other) if side == OPPOSITE[face]]
                if other.lie.up == step.lie.up and wide and abs(span - width - wide[0] - size.nominal) < NEAR:
                    yield Pair(other.key, step.key, "face-before-its-use")


def _cut_into(plan: Plan, holes: Holes) -> Iterator[Pair]:
    """A face is down before anything is cut into it."""
    lowering = {
        face: [plan.steps[index] for index in made if plan.steps[index].lie.up == face]
        for face, made in plan.made.items()
    }
    for chain in holes.chains:
        for step in chain.steps:
            rule = "tap-after-the-last-cut" if step.does == "tap" else "face-before-holes"
            yield from (Pair(other.key, step.key, rule) for other in lowering.get(chain.face, ()))
    for taken in holes.taken:
        if plan.steps[taken.index].makes:
            continue  # a side cut away in full is no pocket
        for other in lowering.get(taken.face, ()):
            yield Pair(other.key, taken.operation.key, "open-cuts-before-pockets")


def _walls(plan: Plan) -> Iterator[Pair]:
    """The middle of a slot or pocket before the passes along its walls, in the
    same set-up and from the same side.
    """
    for wall in plan.steps:
        along = wall.roles.mills == "wall" and getattr(wall.fields, "path", None) is not None
        if not along and not (wall.roles.mills == "recess" and only_wall(wall)):
            continue
        for middle in plan.of(wall.set_up.key):
            grooved = middle.roles.mills in ("groove", "recess") and not only_wall(middle)
            if grooved and middle is not wall:
                yield Pair(middle.key, wall.key, "walls-after-their-middle")


def _close_ones(view: View, plan: Plan) -> Iterator[Pair]:
    """Heavy roughing of a set-up before its very close finishing passes."""
    very = view.reckoned.shop.very_close_limits
    for step in plan.steps:
        own = step.figure("volume") or 0.0
        if not finishes(step, very) or own <= 0:
            continue
        for other in plan.of(step.set_up.key):
            heavy = (other.figure("volume") or 0.0) > TIMES * own
            if other.roles.sizes and not close(other, very) and heavy:
                yield Pair(other.key, step.key, "rough-before-close-finish")


def _best_face(plan: Plan) -> Iterator[Pair]:
    """Of three raw faces or more the largest that is made first of its size before
    those that are smaller than half of it.
    """
    faces = [face for face in plan.made if plan.state(face, 0) != AS_BOUGHT]
    if len(faces) < 3:
        return
    area = max(plan.area(face) for face in faces)
    largest = min(
        (face for face in faces if plan.area(face) > area / 1.0001), key=lambda face: plan.made[face][0]
    )
    first = [plan.steps[index] for index in plan.made[largest]]
    least = min(plan.area(face) for face in faces)
    for face in faces:
        if area > LARGER * plan.area(face) and plan.area(face) <= least * 1.0001:
            yield from (
                Pair(step.key, plan.steps[index].key, "best-face-first")
                for step in first
                for index in plan.made[face]
            )
