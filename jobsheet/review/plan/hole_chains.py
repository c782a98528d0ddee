"""What is done to each hole of a plan, in order, over all set-ups; and what else is taken from its face.

A place is known by where it lies in the stock, not by what a set-up's zero calls it: so a
hole that is drilled in one set-up and reamed in the next is one hole. A hole belongs to
the face that is up when it is made.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from operator import attrgetter
from typing import Any

from msgspec import Struct

from jobsheet.cutting.speed import cone_diameter
from jobsheet.model.identity import by_identity
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.lying import NORMALS, Lying
from jobsheet.model.quantity import Cutter, Place, spot
from jobsheet.model.shape import Edge, Groove, Recess
from jobsheet.operations.registry import roles
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.stages.course import Course, Cut, course_of

#: Steps that leave a round hole of their own size.
SIZING = frozenset({"drill", "bore", "ream", "plunge"})
#: A difference of sizes that is none [m].
SAME = 1e-7
_INDEX = attrgetter("index")


#: What gives a hole a mouth in which a tap starts straight.
MOUTHS = ("spot", "countersink", "counterbore")
#: How much wider than the thread a chamfer is offered [m] (published 0.25 to 0.4 mm on the diameter).
WIDER = 0.4e-3


class HoleStep(Struct, frozen=True, kw_only=True):
    """One step at one place: what it does, its diameter [m] (of a cone at the
    surface), depth [m] or None for through.
    """

    operation: Operation
    set_up: str
    index: int
    does: str
    diameter: float
    depth: float | None
    place: Place

    @property
    def key(self) -> str:
        """The step's key."""
        return self.operation.key

    @property
    def number(self) -> int:
        """The step's number on paper."""
        return self.operation.number

    @property
    def fields(self) -> Any:
        """What is typed of the step."""
        return self.operation.fields

    @property
    def cutter(self) -> Cutter:
        """The tool."""
        cutter: Cutter = self.operation.fields.cutter
        return cutter

    def as_deep_as(self, other: HoleStep) -> bool:
        """Whether it goes at least as deep as another step."""
        return self.depth is None or (other.depth is not None and self.depth >= other.depth - SAME)


class Chain(Struct, frozen=True, kw_only=True):
    """All steps of one hole in cutting order; `at` is where it is on its face, in the drawing's axes [m]."""

    face: str
    at: tuple[float, float]
    steps: tuple[HoleStep, ...]

    def before(self, step: HoleStep) -> tuple[HoleStep, ...]:
        """What was done here before a step."""
        return self.steps[: bisect_left(self.steps, step.index, key=_INDEX)]

    def after(self, step: HoleStep) -> tuple[HoleStep, ...]:
        """What is done here after a step."""
        return self.steps[bisect_right(self.steps, step.index, key=_INDEX) :]

    def hole_before(self, step: HoleStep) -> HoleStep | None:
        """The largest hole that stands here before a step."""
        made = [hole_step for hole_step in self.before(step) if hole_step.does in SIZING]
        return max(made, key=lambda hole_step: (hole_step.diameter, hole_step.index)) if made else None


class Taken(Struct, frozen=True, kw_only=True):
    """A slot, pocket or step in a face: a line with round ends (`width` over
    it) or a box, on that face [m].
    """

    operation: Operation
    set_up: str
    index: int
    face: str
    low: tuple[float, float]
    high: tuple[float, float]
    width: float = 0.0

    def inside(self, at: tuple[float, float]) -> float:
        """How far a point lies inside it [m]; below nought how far outside."""
        if self.width:
            return self.width / 2 - _from_line(at, self.low, self.high)
        return min(at[0] - self.low[0], self.high[0] - at[0], at[1] - self.low[1], self.high[1] - at[1])


class Lowered(Struct, frozen=True, kw_only=True):
    """A step that moves a face inward by `amount` [m]."""

    operation: Operation
    set_up: str
    index: int
    face: str
    amount: float


class Holes(Struct, frozen=True):
    """Everything that rules on holes ask of a plan."""

    chains: tuple[Chain, ...]
    taken: tuple[Taken, ...]
    lowered: tuple[Lowered, ...]
    course: Course

    def by_step(self, key: str) -> Iterator[tuple[Chain, HoleStep]]:
        """Every place of a step."""
        for chain in self.chains:
            for step in chain.steps:
                if step.key == key:
                    yield chain, step

    def cut_away_later(self, chain: Chain, step: HoleStep) -> bool:
        """Whether the metal around a hole goes in a later step: drilling out, an entry hole."""
        return any(
            taken.face == chain.face and taken.index > step.index and taken.inside(chain.at) > 0
            for taken in self.taken
        )

    def lowered_later(self, chain: Chain, step: HoleStep) -> tuple[Lowered, ...]:
        """Steps that still lower the face of a hole after this step."""
        return tuple(
            lowered for lowered in self.lowered if lowered.face == chain.face and lowered.index > step.index
        )


def holes_of(reckoned: Reckoned) -> Holes:
    """All holes of a plan, remembered for this reckoning."""
    return _holes_of(reckoned)


@by_identity(8)
def _holes_of(reckoned: Reckoned) -> Holes:
    job = reckoned.job
    course = course_of(job, reckoned.settings)
    chains: dict[tuple[str, tuple[int, int]], list[HoleStep]] = {}
    where: dict[tuple[str, tuple[int, int]], tuple[float, float]] = {}
    for index, cut, set_up, operation, lying, inside in _walk(job, course):
        for place in places_of(operation):
            step = _step(operation, set_up, index, place)
            if step is None:
                continue
            at = _on_face(lying, set_up, inside, place.x.value, place.y.value)
            key = (cut.before.up, spot(*at))
            where.setdefault(key, at)
            chains.setdefault(key, []).append(step)
    made = tuple(Chain(face=key[0], at=where[key], steps=tuple(steps)) for key, steps in chains.items())
    return Holes(made, tuple(_taken(job, course)), tuple(_lowered(job, course)), course)


def places_of(operation: Operation) -> tuple[Place, ...]:
    """Where a hole step works; nothing for other kinds."""
    if not roles(operation).hole:
        return ()
    places: tuple[Place, ...] = operation.fields.at.points
    return places


def _walk(
    job: Job, course: Course
) -> Iterator[tuple[int, Cut, SetUp, Operation, Lying, tuple[float, float]]]:
    """Every step with its cut, how the work lay when its zero was found, and
    how far inside the zero stands.
    """
    cuts = iter(enumerate(course.cuts))
    for set_up in job.set_ups:
        lying: Lying | None = None
        inside = (0.0, 0.0)
        for operation in set_up.operations:
            index, cut = next(cuts)
            if lying is None:
                lying = cut.before
            if roles(operation).beside == "find":
                lying = cut.before
                size = operation.fields.inside.value if operation.fields.inside is not None else 0.0
                inside = (size, size)
            yield index, cut, set_up, operation, lying, inside


def _on_face(
    lying: Lying, set_up: SetUp, inside: tuple[float, float], x: float, y: float
) -> tuple[float, float]:
    """A place of a set-up as the two coordinates of the stock that lie on the face that is up [m]."""
    along, across = lying.from_corner(set_up, x, y)
    along += inside[0] if set_up.zero.x_from == "left" else -inside[0]
    across += inside[1] if set_up.zero.y_from == "front" else -inside[1]
    return flat(lying, along, across)


def flat(lie: Lying, along: float, across: float) -> tuple[float, float]:
    """A place from the left near corner as the two coordinates of the stock on the face that is up [m]."""
    point = lie.in_stock(along, across)
    up = next(index for index, part in enumerate(NORMALS[lie.up]) if part)
    one, two = (value for index, value in enumerate(point) if index != up)
    return one, two


def does(operation: Operation) -> str:
    """What a step does to a hole, or nothing."""
    return roles(operation).hole


def _step(operation: Operation, set_up: SetUp, index: int, place: Place) -> HoleStep | None:
    fields: Any = operation.fields
    what = does(operation)
    diameter = _diameter(operation, what)
    if diameter is None:
        return None
    depth = getattr(fields, "depth", None)
    deep = getattr(depth, "value", None) if depth is not None else 0.0
    return HoleStep(
        operation=operation, set_up=set_up.key, index=index, does=what, diameter=diameter, depth=deep, place=place
    )  # fmt: skip


def _diameter(operation: Operation, what: str) -> float | None:
    """The diameter that a step leaves [m]: of a cone at the surface, of a thread its major one."""
    fields: Any = operation.fields
    whole: float | None = fields.cutter.diameter
    if what == "tap":
        return float(fields.thread.major)
    if what == "spot":
        to = getattr(fields, "to", None)
        if to is not None:
            return float(to.value)
        depth = getattr(fields.depth, "value", None)
        if depth is None or not fields.cutter.point_angle or fields.cutter.kind == "centre drill":
            return whole
        cone = cone_diameter(depth=depth, point_angle=fields.cutter.point_angle)
        return cone if whole is None else min(whole, cone)
    if what == "countersink":
        return float(fields.to.value)
    if what == "bore":
        return float(fields.to.nominal)
    return whole


def _taken(job: Job, course: Course) -> Iterator[Taken]:
    """Slots, pockets and steps in faces."""
    for index, cut, set_up, operation, _, _ in _walk(job, course):
        lie = cut.before
        for sized in cut.shapes:
            shape = sized.shape
            if isinstance(shape, Groove):
                low, high = (flat(lie, *at) for at in sized.corners)
                width = shape.width
            elif isinstance(shape, Recess):
                (x, y), width = sized.corners[0], 0.0
                low, high = _box(
                    lie, x - shape.length / 2, y - shape.width / 2, x + shape.length / 2, y + shape.width / 2
                )
            elif isinstance(shape, Edge):
                along, across, _ = lie.size
                width = 0.0
                low, high = _box(lie, *_strip(shape, along, across))
            else:
                continue
            yield Taken(
                operation=operation, set_up=set_up.key, index=index, face=lie.up, low=low, high=high, width=width
            )  # fmt: skip


def _strip(edge: Edge, along: float, across: float) -> tuple[float, float, float, float]:
    """What an edge cut takes: left, near, right and far of it [m], a little over the sides."""
    over = 1e-3
    left, near, right, far = -over, -over, along + over, across + over
    if edge.side == "left":
        right = edge.width
    elif edge.side == "right":
        left = along - edge.width
    elif edge.side == "front":
        far = edge.width
    else:
        near = across - edge.width
    return left, near, right, far


def _box(
    lie: Lying, left: float, near: float, right: float, far: float
) -> tuple[tuple[float, float], tuple[float, float]]:
    one, two = flat(lie, left, near), flat(lie, right, far)
    return (min(one[0], two[0]), min(one[1], two[1])), (max(one[0], two[0]), max(one[1], two[1]))


def _lowered(job: Job, course: Course) -> Iterator[Lowered]:
    """Steps that move a face of the work inward."""
    for index, cut, set_up, operation, _, _ in _walk(job, course):
        for face, normal in NORMALS.items():
            axis = next(at for at, part in enumerate(normal) if part)
            end = 1 if normal[axis] > 0 else 0
            amount = abs(cut.after.box[axis][end] - cut.before.box[axis][end])
            if amount > SAME:
                yield Lowered(operation=operation, set_up=set_up.key, index=index, face=face, amount=amount)


def _from_line(at: tuple[float, float], one: tuple[float, float], two: tuple[float, float]) -> float:
    """The distance of a point from a line between two points [m]."""
    dx, dy = two[0] - one[0], two[1] - one[1]
    long = dx * dx + dy * dy
    share = 0.0 if long == 0 else ((at[0] - one[0]) * dx + (at[1] - one[1]) * dy) / long
    share = max(0.0, min(1.0, share))
    return math.dist(at, (one[0] + share * dx, one[1] + share * dy))
