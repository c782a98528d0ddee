"""Where the cutter goes down into a pocket or window: the hole that a step before drilled
for it, from the facts of both steps.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from jobsheet.model.shape import Recess
from jobsheet.report.plan import Course, Plan
from jobsheet.report.points import Point
from jobsheet.stages.course import shapes_of

Spot = tuple[float, float]
#: A hole of this share of the cutter lets it in, as the rule about closed slots has it.
SHARE = 0.8


class Entry(Struct, frozen=True, kw_only=True):
    """A step that goes down at a point, and the pocket that it clears: middle and half
    its sides, counted from the zero [m].
    """

    step: int
    point: Point
    middle: Spot
    half: Spot


def entries(plan: Plan, course: Course) -> tuple[Entry, ...]:
    """The first step of every pocket of a set-up that has a hole to go in by; where none was
    drilled its step does not say where.
    """
    going_in: list[Entry] = []
    begun: list[Recess] = []
    for operation in course.set_up.operations:
        shape = next(iter(shapes_of(operation, plan.reckoned.settings)), None)
        if not isinstance(shape, Recess):
            continue
        again = any(
            abs(recess.x - shape.x) < recess.length / 2 and abs(recess.y - shape.y) < recess.width / 2
            for recess in begun
        )
        begun.append(shape)
        fields: Any = operation.fields
        wide = fields.cutter.diameter or 0.0
        inside = [
            point
            for point in course.points
            if point.diameter >= SHARE * wide > 0 and point.steps[0] < operation.number and _in(shape, point)
        ]
        if inside and not again:
            widest = max(inside, key=lambda point: point.diameter)
            half = shape.length / 2, shape.width / 2
            going_in.append(Entry(step=operation.number, point=widest, middle=(shape.x, shape.y), half=half))
    return tuple(going_in)


def _in(shape: Recess, point: Point) -> bool:
    return abs(point.x - shape.x) < shape.length / 2 and abs(point.y - shape.y) < shape.width / 2
