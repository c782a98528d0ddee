"""The finished part as it is drawn: its box in the stock, and each feature as shapes in the
face it is cut into. No modeller here.

The part lies where the steps leave it: on each axis its datum face (else left, front or bottom) is where
the work ends after the last step, and its size counts from there. So a face that is not where it shall
be shows on the opposite one alone.
"""

from __future__ import annotations

import math
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.finished.finished_part import FinishedPart
from jobsheet.finished.settled import AXES, AXIS, ENDS
from jobsheet.model.finished import Feature
from jobsheet.model.job import SetUp
from jobsheet.model.lying import Box, Lying, lying
from jobsheet.model.quantity import Size
from jobsheet.model.shape import Edge, Groove, Hole, Recess
from jobsheet.stages.course import Sized
from jobsheet.stages.floors import covers, from_corner

#: A slot that is open at an edge goes so far beyond it [m].
BEYOND = 5e-3
#: Of a thread's flanks: the hole below it is at least the major diameter less so many pitches (ISO 68-1: 5/8
#: of the sharp V's height on both sides).
CORE = 1.0825
#: A blind hole may have the point of its drill below its full depth: at most so steep [rad] (a
#: 90° point; common practice is 118°).
POINT = math.pi / 2
#: The edge of a hole may be broken so far, by its spot or by hand, where no mouth is
#: said [m] (common practice, no source).
BROKEN = 0.5e-3
#: A blind hole below a thread may be deeper than the thread by so many pitches, where the drawing
#: does not say its depth: common practice, no source; the drawing's usual 5 pitches
#: (planning-from-drawing, example 7) and as many again.
DEEPER = 10
_SIDE = {"left": "left", "right": "right", "near": "front", "far": "rear"}


class Drawn(Struct, frozen=True, kw_only=True):
    """One feature on the part: the line that says it, how the part lies for its face,
    what must be gone, and what may be.

    Nothing must be gone of a feature whose place is not said, or whose shape is only
    read as words; `unclear` says which.
    """

    line: int
    feature: Feature
    lie: Lying
    gone: tuple[Sized, ...] = ()
    may: tuple[Sized, ...] = ()
    unclear: str = ""


def part_box(final: Box, part: FinishedPart) -> Box:
    """Where the finished part lies in the drawing's axes of the stock [m], from
    where the last step leaves the work.
    """
    with_letters = {face for _, face in part.datums}
    sizes = part.shape.sizes if part.shape is not None else (None, None, None)
    spans = []
    for axis, (low, high) in enumerate(final):
        size = sizes[axis]
        lower, upper = ENDS[axis]
        if size is None or within_limits(part, size, high - low):
            spans.append(
                (low, high)
            )  # limits are there to be used: what counts from the other face counts from where it is
        elif upper in with_letters and lower not in with_letters:
            spans.append((high - size.nominal, high))
        else:
            spans.append((low, low + size.nominal))
    return spans[0], spans[1], spans[2]


def within_limits(part: FinishedPart, size: Size, value: float) -> bool:
    """Whether a size [m] lies within its limits; without any nothing does."""
    limits = part.limits(size)
    return limits is not None and limits[0] - 1e-9 <= value <= limits[1] + 1e-9


def lie_for(face: str, box: Box) -> Lying:
    """The part with that face up, so that along is the first axis of the face's places."""
    operator = "front" if AXIS[face] == AXIS["top"] else "bottom"
    return lying(SetUp(key="drawn", number=1, up=face, operator=operator), box)


def drawn(part: FinishedPart, box: Box) -> tuple[Drawn, ...]:
    """Every feature that can be read, on a part of that box; a hole in the floor
    of another of its face begins there.
    """
    made = tuple(_drawn(line, feature, box) for line, feature in part.features)
    return tuple(_begun(drawn, made) for drawn in made)


def _begun(drawn: Drawn, others: tuple[Drawn, ...]) -> Drawn:
    if drawn.feature.what not in ("hole", "tapped hole"):
        return drawn
    floors = [
        floor
        for other in others
        if other.feature.face == drawn.feature.face and other.feature.what not in ("hole", "tapped hole")
        for floor in other.gone
        if floor.depth is not None
    ]

    def from_floor(sized: Sized) -> Sized:
        under = [
            floor.depth
            for floor in floors
            if floor.depth and covers(floor.shape, floor.corners, drawn.lie.size, sized.corners[0])
        ]
        return replace(sized, top=max(under)) if under else sized

    if not floors:
        return drawn
    return replace(drawn, gone=tuple(map(from_floor, drawn.gone)), may=tuple(map(from_floor, drawn.may)))


def _drawn(line: int, feature: Feature, box: Box) -> Drawn:
    lie = lie_for(feature.face, box)
    made = Drawn(line=line, feature=feature, lie=lie)
    if feature.what in ("T-slot", "dovetail", "chamfer"):
        return _without(made, "its shape is not compared")
    if feature.shaft is not None:
        return _without(made, "its place and sizes are compared, its shape is not")
    if feature.what == "step":
        return _with(made, _step(feature, lie))
    if feature.what in ("slot", "keyway"):
        groove = _groove(feature, box, lie)
        return _with(made, groove) if groove else _without(made, "its place is not said")
    points = places_on(feature, box)
    if not points:
        return _without(made, "its place is not said")
    corners = [from_corner(lie, point) for point in points]
    if feature.what in ("pocket", "window"):
        return _with(made, tuple(_recess(feature, at) for at in corners))
    gone = tuple(sized for at in corners for sized in _hole(feature, at))
    may = tuple(sized for at in corners for sized in _may(feature, at))
    return Drawn(line=line, feature=feature, lie=lie, gone=gone, may=may)


def _with(made: Drawn, gone: tuple[Sized, ...]) -> Drawn:
    return Drawn(line=made.line, feature=made.feature, lie=made.lie, gone=gone)


def _without(made: Drawn, why: str) -> Drawn:
    return Drawn(line=made.line, feature=made.feature, lie=made.lie, unclear=why)


# --- places ---


def places_on(feature: Feature, box: Box) -> tuple[tuple[float, float, float], ...]:
    """Where it lies, on its face, in the drawing's axes [m]; nothing where no place is said."""
    if feature.circle is not None:
        return _on_circle(feature, box)
    if feature.places is None:
        return ()
    return tuple(point_on(feature, box, (place.x.value, place.y.value)) for place in feature.places.points)


def point_on(feature: Feature, box: Box, far: tuple[float, float]) -> tuple[float, float, float]:
    """A point of its face from the two numbers of a place [m]."""
    point = [0.0, 0.0, 0.0]
    axis = AXIS[feature.face]
    point[axis] = box[axis][1 if feature.face == ENDS[axis][1] else 0]
    counted = feature.counted or tuple(ENDS[axis][0] for axis in AXES[feature.face])
    for axis, face, distance in zip(AXES[feature.face], counted, far, strict=True):
        low, high = box[axis]
        point[axis] = low + distance if face == ENDS[axis][0] else high - distance
    return point[0], point[1], point[2]


def _on_circle(feature: Feature, box: Box) -> tuple[tuple[float, float, float], ...]:
    circle = feature.circle
    assert circle is not None
    if circle.middle is not None:
        middle = circle.middle.x.value, circle.middle.y.value
    else:
        one, two = (box[axis][1] - box[axis][0] for axis in AXES[feature.face])
        middle = one / 2, two / 2
    angles = [circle.first + 2 * math.pi * index / feature.count for index in range(feature.count)]
    radius = circle.diameter.value / 2
    return tuple(
        point_on(feature, box, (middle[0] + radius * math.cos(angle), middle[1] + radius * math.sin(angle)))
        for angle in angles
    )


# --- shapes ---


def _hole(feature: Feature, at: tuple[float, float]) -> list[Sized]:
    """What must be gone of a hole: itself, the core of its thread, and its mouth."""
    size = feature.size.nominal if feature.size is not None else 0.0
    if feature.thread is not None:
        size = feature.thread.major - CORE * feature.thread.pitch
    depth = feature.depth.nominal if feature.depth is not None else None
    found = [_round(at, size, depth)]
    mouth = feature.mouth
    if mouth is not None and mouth.angle is not None:
        found.append(_round(at, mouth.size.nominal, 0.0, mouth.angle))
    elif mouth is not None and mouth.depth is not None:
        found.append(_round(at, mouth.size.nominal, mouth.depth.nominal))
    return found


def _may(feature: Feature, at: tuple[float, float]) -> list[Sized]:
    """What may be gone beside it: a thread up to its major diameter, the point of the
    drill, what a spot face cleans up.
    """
    if feature.size is None:
        return []
    whole = feature.thread.major if feature.thread is not None else feature.size.nominal
    rounds = [_round(at, whole + 2 * BROKEN, BROKEN)]
    depth = feature.depth.nominal if feature.depth is not None else None
    if feature.thread is not None:
        below = feature.hole_depth.nominal if feature.hole_depth is not None else None
        if depth is not None:
            below = below if below is not None else depth + DEEPER * feature.thread.pitch
        rounds.append(_round(at, feature.thread.major, below, POINT if below is not None else None))
    elif depth is not None:
        rounds.append(_round(at, feature.size.nominal, depth, POINT))
    if feature.mouth is not None and feature.mouth.what == "spot face" and feature.mouth.depth is None:
        # Just cleaned up: a millimetre is a great deal for that (common practice, no source).
        rounds.append(_round(at, feature.mouth.size.nominal, 1e-3))
    return rounds


def _round(
    at: tuple[float, float], diameter: float, depth: float | None, point: float | None = None
) -> Sized:
    hole = Hole(x=at[0], y=at[1], diameter=diameter, depth=depth, point_angle=point)
    return Sized(shape=hole, corners=(at,), depth=depth)


def _recess(feature: Feature, at: tuple[float, float]) -> Sized:
    length, width, radius = (
        size.nominal if size is not None else 0.0 for size in (feature.size, feature.other, feature.radius)
    )
    depth = feature.depth.nominal if feature.depth is not None else None
    shape = Recess(x=at[0], y=at[1], length=length, width=width, radius=radius, depth=depth)
    return Sized(shape=shape, corners=(at,), depth=depth)


def _step(feature: Feature, lie: Lying) -> tuple[Sized, ...]:
    width = feature.size.nominal if feature.size is not None else 0.0
    depth = feature.depth.nominal if feature.depth is not None else 0.0
    sides = [_SIDE[lie.side(face)] for face in feature.opens]
    return tuple(Sized(shape=Edge(side=side, width=width, depth=depth), depth=depth) for side in sides)


def _groove(feature: Feature, box: Box, lie: Lying) -> tuple[Sized, ...]:
    """A slot between two points, or along its middle line from an edge; nothing where a place is not said."""
    width = feature.size.nominal if feature.size is not None else 0.0
    depth = feature.depth.nominal if feature.depth is not None else None
    ends = ends_on(feature, box, width)
    if ends is None:
        return ()
    (x1, y1), (x2, y2) = (from_corner(lie, end) for end in ends)
    shape = Groove(x1=x1, y1=y1, x2=x2, y2=y2, width=width, depth=depth)
    return (Sized(shape=shape, corners=((x1, y1), (x2, y2)), depth=depth),)


def ends_on(feature: Feature, box: Box, width: float = 0.0) -> Any:
    """The two centres of its ends on its face [m], or None."""
    if feature.across is None:
        points = places_on(feature, box)
        return points if len(points) == 2 else None
    axes = AXES[feature.face]
    runs = AXIS[feature.opens[0]]
    low, high = box[runs]
    base = point_on(feature, box, tuple(feature.across.nominal for _ in axes))  # type: ignore[arg-type]
    if len(feature.opens) == 2:
        spans = (low - BEYOND - width, high + BEYOND + width)
    elif feature.length is not None:
        # From the edge to the end of its round, which has its centre half a width before.
        inward = feature.length.nominal - (width / 2 if feature.over_all is not False else 0.0)
        first = feature.opens[0] == ENDS[runs][0]
        spans = (low - BEYOND - width, low + inward) if first else (high - inward, high + BEYOND + width)
    else:
        return None
    return tuple(tuple(span if axis == runs else base[axis] for axis in range(3)) for span in spans)
