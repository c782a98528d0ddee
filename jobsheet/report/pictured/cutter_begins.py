"""The first cut of a set-up from above: where its cutter begins and which way it
is fed, from the facts of its step.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from jobsheet.drawing.drawn import Item, Line
from jobsheet.drawing.making import arrow
from jobsheet.model.job import Operation
from jobsheet.model.shape import Edge, Groove, Slab
from jobsheet.report.plan import Course, Plan
from jobsheet.report.rows.outside_cuts import SAME, widths_of
from jobsheet.stages.course import Cut, course_of

Spot = tuple[float, float]
#: An arrow of the feed is so long at most and at least, from the middle of the cutter [points].
LONGEST, SHORTEST = 46.0, 16.0


class FirstCut(Struct, frozen=True, kw_only=True):
    """Where the middle of the cutter begins, its radius, and to where it is fed, in
    the frame of the work as it lies [m].
    """

    step: int
    begins: Spot
    radius: float
    to: Spot


def first_cut(plan: Plan, course: Course) -> FirstCut | None:
    """The first step of a set-up that takes metal off; None where that is a
    hole, which has its point, or a pocket.

    Where a pocket begins, and round a broken edge, its step does not say.
    """
    cuts = {cut.key: cut for cut in course_of(plan.job, plan.reckoned.settings).cuts}
    for operation in course.set_up.operations:
        cut = cuts[operation.key]
        if cut.shapes:
            return _first(plan, operation, cut)
    return None


def _first(plan: Plan, operation: Operation, cut: Cut) -> FirstCut | None:
    fields: Any = operation.fields
    cutter = getattr(fields, "cutter", None)
    diameter = cutter.diameter if cutter is not None else None
    if not diameter:
        return None
    shape, radius = cut.shapes[0].shape, diameter / 2
    if isinstance(shape, Slab):
        line = _strip(plan, operation, cut, radius)
    elif isinstance(shape, Edge):
        width = widths_of(plan.reckoned, operation, shape.width)[0][0]
        line = _side(shape.side, cut.before.size[:2], width - radius)
        if getattr(fields, "way", "") == "climb":
            line = (line[1], line[0])
    elif isinstance(shape, Groove):
        line = (cut.shapes[0].corners[0], cut.shapes[0].corners[1])
    else:
        return None
    return FirstCut(step=operation.number, begins=line[0], radius=radius, to=line[1])


def _strip(plan: Plan, operation: Operation, cut: Cut, radius: float) -> tuple[Spot, Spot]:
    """The first strip of a face, fed along its handle, the work on the left of
    the cutter: against its rotation.

    Seen from above a right-hand cutter turns clockwise; fed with the work on its left it cuts the
    conventional way (common practice). A strip that takes the whole width has the cutter over the middle.
    """
    long, across = cut.before.size[:2]
    figures = plan.reckoned.operations[operation.key].figures
    width = figures.value("width_of_cut") if figures is not None else None
    along_y = getattr(operation.fields, "along", "x") == "y"
    whole = long if along_y else across
    inside = whole / 2 if width is None or width >= whole - SAME else width - radius
    return ((long - inside, 0.0), (long - inside, across)) if along_y else ((0.0, inside), (long, inside))


def _side(side: str, size: tuple[float, float], inside: float) -> tuple[Spot, Spot]:
    """Along a side from end to end, the work on the left of the cutter."""
    long, across = size
    lines: dict[str, tuple[Spot, Spot]] = {
        "front": ((0.0, inside), (long, inside)),
        "rear": ((long, across - inside), (0.0, across - inside)),
        "left": ((inside, across), (inside, 0.0)),
        "right": ((long - inside, 0.0), (long - inside, across)),
    }
    return lines[side]


def cutter_items(
    first: FirstCut, left: float, foot: float, scale: float, within: tuple[float, float, float, float]
) -> list[Item]:
    """The cutter as a dashed ring with its middle, and an arrow the way it is fed.

    `left`, `foot` is where the work's nought is; of a ring that is larger than its room only so much is drawn
    as lies `within` left, top, right, bottom [points].
    """
    x, y = left + first.begins[0] * scale, foot - first.begins[1] * scale
    end = left + first.to[0] * scale, foot - first.to[1] * scale
    radius = first.radius * scale
    items: list[Item] = [
        *(Line(dash, "outline") for dash in _dashes(x, y, radius, within)),
        Line(((x - 2.5, y), (x + 2.5, y)), "thin"),
        Line(((x, y - 2.5), (x, y + 2.5)), "thin"),
    ]
    run = math.hypot(end[0] - x, end[1] - y)
    if run > SHORTEST / 2:
        long = min(max(radius + 12.0, SHORTEST), LONGEST) / run
        tip = (x + (end[0] - x) * long, y + (end[1] - y) * long)
        items += arrow((x, y), tip, weight=1.5, head=8.0)
    return items


def _dashes(
    x: float, y: float, radius: float, within: tuple[float, float, float, float]
) -> Iterator[tuple[Spot, ...]]:
    """The strokes of a dashed ring that lie in a room, some 4 points long with gaps between them."""
    count = max(8, round(2 * math.pi * radius / 6.4))
    for stroke in range(count):
        turns = [2 * math.pi * (stroke + 0.62 * part / 3) / count for part in range(4)]
        points = tuple((x + radius * math.cos(turn), y + radius * math.sin(turn)) for turn in turns)
        if all(within[0] <= px <= within[2] and within[1] <= py <= within[3] for px, py in points):
            yield points
