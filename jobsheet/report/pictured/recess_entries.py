"""Where the cutter goes down into a pocket or window: the hole that a step before drilled for it, from the facts of both steps."""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from jobsheet.drawing.drawn import Item, Line, Text
from jobsheet.drawing.making import arrow, box
from jobsheet.model.lying import Lying
from jobsheet.model.shape import Recess
from jobsheet.report.plan import Course, Plan
from jobsheet.report.points import Point
from jobsheet.stages.course import shapes_of

Spot = tuple[float, float]
#: A hole of this share of the cutter lets it in, as the rule about closed slots has it.
SHARE = 0.8
#: The arrow into the hole [points], across and down.
REACH = (13.0, 10.0)


class Entry(Struct, frozen=True, kw_only=True):
    """A step that goes down at a point, and the pocket that it clears: middle and half its sides, counted from the zero [m]."""

    step: int
    point: Point
    middle: Spot
    half: Spot


def entries(plan: Plan, course: Course) -> tuple[Entry, ...]:
    """The first step of every pocket of a set-up that has a hole to go in by; where none was drilled its step does not say where."""
    found: list[Entry] = []
    begun: list[Recess] = []
    for operation in course.set_up.operations:
        shape = next(iter(shapes_of(operation, plan.reckoned.settings)), None)
        if not isinstance(shape, Recess):
            continue
        again = any(
            abs(one.x - shape.x) < one.length / 2 and abs(one.y - shape.y) < one.width / 2 for one in begun
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
            found.append(Entry(step=operation.number, point=widest, middle=(shape.x, shape.y), half=half))
    return tuple(found)


def _in(shape: Recess, point: Point) -> bool:
    return abs(point.x - shape.x) < shape.length / 2 and abs(point.y - shape.y) < shape.width / 2


def entry_items(course: Course, entry: Entry, left: float, foot: float, scale: float) -> list[Item]:
    """The pocket dashed, and an arrow with its step into the hole; `left`, `foot` is where the work's nought is [points]."""
    lie: Lying = course.lie

    def at(x: float, y: float) -> Spot:
        along, away = lie.from_corner(course.set_up, x, y)
        return left + along * scale, foot - away * scale

    (mx, my), (hx, hy) = entry.middle, entry.half
    one, other = at(mx - hx, my - hy), at(mx + hx, my + hy)
    low, top = (min(one[axis], other[axis]) for axis in (0, 1))
    x, y = at(entry.point.x, entry.point.y)
    tail = (x + REACH[0], y - REACH[1])
    return [
        Line(box(low, top, abs(other[0] - one[0]), abs(other[1] - one[1])), "thin", "removed", closed=True),
        *arrow(tail, (x, y), weight=1.5, head=6.0),
        Text(
            (one[0] + other[0]) / 2,
            max(one[1], other[1]) + 7.6,
            f"in, step {entry.step}",
            "caption",
            "middle",
        ),
    ]
