"""Whether the steps cut just what the drawing asks, seen from their sizes alone: no solid is made here.

Most plans of plain parts cut each hole and step to the size that is drawn. That no metal is left on and none cut away
is then certain without the modeller, whose answer takes longer than all else that the review asks of a small part. Only
what is certain is said: every cutter inside the part keeps to what may be gone, and all that must be gone lies in what
a cutter passed. Holes along one axis are compared by their radius at every height, steps and layers as boxes; of
anything else, and of what is over by more than a thousandth, the solids are asked.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from itertools import pairwise

from msgspec import Struct

from jobsheet.finished.finished_part import FinishedPart
from jobsheet.model.lying import NORMALS, Box, Lying
from jobsheet.model.shape import Bevel, Edge, Hole, Slab
from jobsheet.stages.as_drawn import Drawn
from jobsheet.stages.bodies import MM
from jobsheet.stages.course import Cut, Sized, is_through, takes_away

#: What is thinner than this is no piece [m]: a tenth of what the solids count as none.
CLOSE = 1e-6
#: Axes that are as near as this are one [m].
_SAME = 1e-9
#: As far as anything goes [m].
_FAR = 1e3
#: How far a cutter sticks out of the surface it enters [m]: `solids.OUT`.
_OUT = 1e-3


class _Column(Struct, frozen=True):
    """A hole as its radius along its axis: `at` are the two other coordinates; each piece goes from one place on the
    axis to a higher one, with the radius at both [m]. `sides` has the solid that is made of it.
    """

    axis: int
    at: tuple[float, float]
    pieces: tuple[tuple[float, float, float, float], ...]
    sides: int

    def radius(self, low: float, high: float) -> tuple[float, float] | None:
        """The radius at both ends of a stretch that lies in one piece; None where there is nothing."""
        for begin, end, first, last in self.pieces:
            if begin <= low + _SAME and high <= end + _SAME:
                rise = (last - first) / (end - begin)
                return first + rise * (low - begin), first + rise * (high - begin)
        return None


class _Met(Struct, frozen=True):
    """What was passed or may be gone: holes, and boxes in the drawing's axes."""

    columns: tuple[_Column, ...]
    boxes: tuple[Box, ...]


def all_as_drawn(
    cuts: Sequence[Cut], work: Box, box: Box, drawn: tuple[Drawn, ...], limits: Sequence[tuple[Drawn, ...]], part: FinishedPart,
) -> bool:  # fmt: skip
    """Whether certainly nothing is left of what must be gone, and nothing cut of what must stay.

    Parameters
    ----------
    cuts : sequence of Cut
        The steps that took something away
    work, box : Box
        The box round the work after the last step, and where the finished part lies [m]
    drawn : tuple of Drawn
        The features as they are drawn, with what they leave open
    limits : two of the same
        The features at their lower and at their upper limits
    """
    tools = [(sized, cut.before) for cut in cuts for sized in cut.shapes if takes_away(sized.shape)]
    least, most = ([(sized, other.lie) for other in end for sized in other.gone] for end in limits)
    may = [(sized, other.lie) for other in drawn for sized in other.may]
    passed, needed, allowed = _met(_no_bevels(tools)), _met(least), _met([*most, *may])
    if passed is None or needed is None or allowed is None:
        return False
    leg = max(
        (feature.size.nominal for _, feature in part.features if feature.what == "chamfer" and feature.size),
        default=0.0,
    )
    return (
        all(_keeps_to_edges(sized.shape, lie, box, leg) for sized, lie in tools if isinstance(sized.shape, Bevel))
        and all(_within(column, allowed, box) for column in passed.columns)
        and all(_boxed(other, allowed.boxes, box) for other in passed.boxes)
        and all(_within(column, passed, work) for column in needed.columns)
        and all(_boxed(other, passed.boxes, work) for other in needed.boxes)
    )  # fmt: skip


def _no_bevels(shapes: Iterable[tuple[Sized, Lying]]) -> list[tuple[Sized, Lying]]:
    return [(sized, lie) for sized, lie in shapes if not isinstance(sized.shape, Bevel)]


def _met(shapes: Iterable[tuple[Sized, Lying]]) -> _Met | None:
    """Shapes as columns and boxes; None where one is neither."""
    columns: list[_Column] = []
    boxes: list[Box] = []
    for sized, lie in shapes:
        if isinstance(sized.shape, Hole):
            column = _column(sized.shape, sized, lie)
            if column is None:
                return None
            columns.append(column)
        elif isinstance(sized.shape, Slab | Edge):
            boxes.append(_box(sized.shape, sized, lie))
        else:
            return None
    return _Met(tuple(columns), tuple(boxes))


# --- holes ---


def _column(shape: Hole, sized: Sized, lie: Lying) -> _Column | None:
    """A hole as `solids` makes it; None where it makes nothing of it, or a cone of no height."""
    from jobsheet.stages.solids import _sides

    radius = shape.diameter / 2
    if radius <= 0:
        return None
    angle = min(shape.point_angle or 0.0, math.pi * 0.999)
    tip = radius / math.tan(angle / 2) if angle > 0 else 0.0
    if sized.depth is None:
        pieces = [(-lie.size[2] - _OUT, _OUT, radius, radius)]
    elif sized.depth > 0:
        end = -(sized.top + sized.depth)
        pieces = [(end, _OUT, radius, radius)]
        if tip > 0:
            pieces.append((end - tip, end, 0.0, radius))
    elif tip > 0:
        end = -sized.top
        pieces = [(end - tip, end, 0.0, radius), (end, end + _OUT, radius, radius * (1 + _OUT / tip))]
    else:
        return None
    axis, up = _axis(lie.up)
    top = lie.box[axis][1 if up > 0 else 0]
    if up > 0:
        along = [(top + low, top + high, first, last) for low, high, first, last in pieces]
    else:
        along = [(top - high, top - low, last, first) for low, high, first, last in pieces]
    point = lie.in_stock(*sized.corners[0])
    one, two = (place for at, place in enumerate(point) if at != axis)
    return _Column(axis, (one, two), tuple(along), _sides(radius * MM))


def _within(column: _Column, met: _Met, box: Box) -> bool:
    """Whether a hole, as far as it lies in a box, lies in others along its axis, or else in one box."""
    others = [
        each for each in met.columns if each.axis == column.axis and math.dist(each.at, column.at) <= _SAME
    ]
    low, high = box[column.axis]
    knots = {low, high}
    for each in (column, *others):
        knots |= {min(max(end, low), high) for piece in each.pieces for end in piece[:2]}
    ends = sorted(knots)
    stretches = [(a, b) for a, b in pairwise(ends) if b - a > CLOSE]
    return all(
        _stretch_within(column, others, a, b) or _in_a_box(column, met.boxes, box, a, b) for a, b in stretches
    )


def _stretch_within(column: _Column, others: Sequence[_Column], low: float, high: float) -> bool:
    asked = column.radius(low, high)
    if asked is None:
        return True
    for each in others:
        found = each.radius(low, high)
        # A solid with other corners than its hole has: what counts is the circle inside it.
        inner = 1.0 if each.sides == column.sides else math.cos(math.pi / each.sides)
        if found is not None and all(a <= b * inner + CLOSE for a, b in zip(asked, found, strict=True)):
            return True
    return False


def _in_a_box(column: _Column, boxes: Iterable[Box], box: Box, low: float, high: float) -> bool:
    """Whether a stretch of a hole lies in a box, as one that is drilled into a step before it is cut does."""
    wide = max(column.radius(low, high) or (0.0,))
    spans = [(place - wide, place + wide) for place in column.at]
    spans.insert(column.axis, (low, high))
    return _boxed((spans[0], spans[1], spans[2]), boxes, box)


# --- boxes ---


def _axis(face: str) -> tuple[int, int]:
    normal = NORMALS[face]
    axis = next(at for at, part in enumerate(normal) if part)
    return axis, normal[axis]


def _box(shape: Slab | Edge, sized: Sized, lie: Lying) -> Box:
    """A layer or the metal off one side, without an end where it leaves the work."""
    along, across, high = lie.size
    spans = {"right": (-_FAR, _FAR), "far": (-_FAR, _FAR)}
    if isinstance(shape, Slab):
        down = shape.depth
    else:
        down = _FAR if is_through(sized, high) else sized.depth or 0.0
        wide = shape.width
        if shape.side in ("left", "right"):
            spans["right"] = (-_FAR, wide) if shape.side == "left" else (along - wide, _FAR)
        else:
            spans["far"] = (-_FAR, wide) if shape.side == "front" else (across - wide, _FAR)
    spans["up"] = (high - down, _FAR)
    found: list[tuple[float, float]] = [(0.0, 0.0)] * 3
    for name, (first, last) in spans.items():
        axis, sign = _axis(getattr(lie, name))
        low, top = lie.box[axis]
        found[axis] = (low + first, low + last) if sign > 0 else (top - last, top - first)
    return found[0], found[1], found[2]


def _boxed(one: Box, others: Iterable[Box], box: Box) -> bool:
    """Whether a box, as far as it lies in another, is thinner than counts or lies in one of several."""
    inside = [(max(a, low), min(b, high)) for (a, b), (low, high) in zip(one, box, strict=True)]
    if any(high - low <= CLOSE for low, high in inside):
        return True
    return any(
        all(a <= low + CLOSE and high <= b + CLOSE for (low, high), (a, b) in zip(inside, other, strict=True))
        for other in others
    )


def _keeps_to_edges(shape: Bevel, lie: Lying, box: Box, leg: float) -> bool:
    """Whether edges that were broken are those of the part, no wider than any chamfer of the drawing."""
    axis, up = _axis(lie.up)
    end = 1 if up > 0 else 0
    same = all(
        abs(a - b) <= CLOSE
        for at in range(3)
        for side, (a, b) in enumerate(zip(lie.box[at], box[at], strict=True))
        if at != axis or side == end
    )
    return same and shape.size <= leg + CLOSE
