"""What a step runs into of what holds the work: where cutter, holder and drill point go,
against the bodies of the holding.

Boxes first: what does not touch in its box touches nowhere. Then the very shapes: a cutter goes
along a line or over a field with its radius, a body is a box or a cylinder that stands. No modeller:
both are simple enough to be exact.
"""

from __future__ import annotations

import math

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.model.held_work import Body
from jobsheet.model.shape import Edge, Groove, Hole, Recess, Slab
from jobsheet.stages.course import Cut, Sized, is_through

#: A cutter runs out so far over the ends of a face or a wall, beside its
#: radius [m] (common practice, no source).
RUN_OUT = 2e-3
#: A drill goes so far out at the bottom beside its point [m] (common practice, no source).
THROUGH = 1e-3
#: Half of a holder or chuck where nobody says [m] (common practice, no source).
HOLDER = 16e-3
#: Everything above the cutter goes up from here [m]: no body is higher.
UP = 1.0
#: Touching is no clash [m].
TOUCH = 1e-6

Point = tuple[float, float]


class Swept(Struct, frozen=True, kw_only=True):
    """Where one thing goes: a line with a radius round it, or a field, and
    from which level up to which [m].
    """

    by: str
    line: tuple[Point, Point] | None = None
    radius: float = 0.0
    field: tuple[Point, Point] | None = None
    low: float
    high: float = UP


class Clash(Struct, frozen=True, kw_only=True):
    """One body that is met: by what, how deep under its top [m], and whether its sizes are sure."""

    part: str
    by: str
    deep: float
    sure: bool
    body: Body


def clashes(
    cut: Cut, bodies: tuple[Body, ...], radius: float, stick_out: float | None = None
) -> tuple[Clash, ...]:
    """Every body that a step meets, the surest first.

    Parameters
    ----------
    radius : float
        Of its cutter [m]; 0 where it has none that goes sideways
    stick_out : float, optional
        How far the cutter stands out of its holder [m]; without it the holder is not asked
    """
    touching = []
    for swept in sweeps(cut, radius, stick_out):
        for body in bodies:
            if (
                body.low[2] >= swept.high - TOUCH
                or body.high[2] <= swept.low + TOUCH
                or not _beside(swept, _at_level(body, swept.low))
            ):
                continue
            touching.append(
                Clash(
                    part=body.part, by=swept.by, deep=body.high[2] - max(swept.low, body.low[2]),
                    sure=body.sure and swept.by != "holder", body=body,
                )
            )  # fmt: skip
    return tuple(sorted(touching, key=lambda clash: (not clash.sure, -clash.deep)))


def sweeps(cut: Cut, radius: float, stick_out: float | None = None) -> tuple[Swept, ...]:
    """Where cutter and holder of a step go, in the frame of the work as it lies."""
    found: list[Swept] = []
    for sized in cut.shapes:
        swept = _swept(sized, cut, radius)
        if swept is None:
            continue
        found.append(swept)
        if stick_out is not None:
            found.append(_holder(swept, radius, stick_out))
    return tuple(found)


def _holder(swept: Swept, radius: float, stick_out: float) -> Swept:
    """The head of the holder above its cutter, with a diameter of its own: it goes wider than what is cut."""
    low = swept.low + stick_out
    if swept.line is not None:
        return Swept(by="holder", line=swept.line, radius=max(HOLDER, swept.radius), low=low)
    assert swept.field is not None
    wider = max(HOLDER - radius, 0.0)
    (x0, y0), (x1, y1) = swept.field
    return Swept(by="holder", field=((x0 - wider, y0 - wider), (x1 + wider, y1 + wider)), low=low)


def _swept(sized: Sized, cut: Cut, radius: float) -> Swept | None:
    long, wide, high = cut.before.size
    shape = sized.shape
    if isinstance(shape, Slab):
        out = radius + RUN_OUT
        return Swept(by="cutter", field=((-out, -out), (long + out, wide + out)), low=high - shape.depth)
    if isinstance(shape, Edge):
        inside = shape.width - radius
        line: tuple[Point, Point] = {
            "left": ((inside, -RUN_OUT), (inside, wide + RUN_OUT)),
            "right": ((long - inside, -RUN_OUT), (long - inside, wide + RUN_OUT)),
            "front": ((-RUN_OUT, inside), (long + RUN_OUT, inside)),
            "rear": ((-RUN_OUT, wide - inside), (long + RUN_OUT, wide - inside)),
        }[shape.side]
        return Swept(by="cutter", line=line, radius=radius, low=high - shape.depth)
    if isinstance(shape, Groove):
        low = -THROUGH if is_through(sized, high) else high - (sized.depth or 0.0)
        return Swept(by="cutter", line=(sized.corners[0], sized.corners[1]), radius=shape.width / 2, low=low)
    if isinstance(shape, Recess):
        x, y = sized.corners[0]
        low = -THROUGH if is_through(sized, high) else high - (sized.depth or 0.0)
        half = shape.length / 2, shape.width / 2
        return Swept(by="cutter", field=((x - half[0], y - half[1]), (x + half[0], y + half[1])), low=low)
    if isinstance(shape, Hole):
        point = shape.diameter / 2 / math.tan(shape.point_angle / 2) if shape.point_angle else 0.0
        low = (
            -(point + THROUGH) if is_through(sized, high) else high - sized.top - (sized.depth or 0.0) - point
        )
        return Swept(
            by="drill", line=(sized.corners[0], sized.corners[0]), radius=shape.diameter / 2, low=low
        )
    return None


def _at_level(body: Body, low: float) -> Body:
    """What a cutter meets that comes down to that level: a cylinder that lies
    is narrower above its middle.
    """
    middle, radius = (body.low[2] + body.high[2]) / 2, (body.high[2] - body.low[2]) / 2
    if body.axis not in (0, 1) or low <= middle:
        return body
    across, half = 1 - body.axis, math.sqrt(max(radius**2 - (low - middle) ** 2, 0.0))
    centre = (body.low[across] + body.high[across]) / 2
    lows, highs = list(body.low), list(body.high)
    lows[across], highs[across] = centre - half, centre + half
    return replace(body, low=(lows[0], lows[1], lows[2]), high=(highs[0], highs[1], highs[2]))


# --- plane geometry ---


def _beside(swept: Swept, body: Body) -> bool:
    """Whether both overlap seen from above."""
    low, high = (body.low[0], body.low[1]), (body.high[0], body.high[1])
    if body.axis == 2:
        middle = ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)
        reach = (high[0] - low[0]) / 2
        if swept.line is not None:
            return _from_line(middle, *swept.line) < reach + swept.radius - TOUCH
        assert swept.field is not None
        return _from_field(middle, *swept.field) < reach - TOUCH
    if swept.line is not None:
        return _line_to_field(swept.line, low, high) < swept.radius - TOUCH
    assert swept.field is not None
    (x0, y0), (x1, y1) = swept.field
    return x0 < high[0] - TOUCH and x1 > low[0] + TOUCH and y0 < high[1] - TOUCH and y1 > low[1] + TOUCH


def _from_field(at: Point, low: Point, high: Point) -> float:
    """How far a point is from a field; 0 in it."""
    return math.hypot(*(max(low[axis] - at[axis], at[axis] - high[axis], 0.0) for axis in (0, 1)))


def _from_line(at: Point, one: Point, other: Point) -> float:
    """How far a point is from a line between two points."""
    run = (other[0] - one[0], other[1] - one[1])
    square = run[0] ** 2 + run[1] ** 2
    share = 0.0 if not square else ((at[0] - one[0]) * run[0] + (at[1] - one[1]) * run[1]) / square
    share = min(max(share, 0.0), 1.0)
    return math.dist(at, (one[0] + share * run[0], one[1] + share * run[1]))


def _line_to_field(line: tuple[Point, Point], low: Point, high: Point) -> float:
    """How far a line between two points is from a field; 0 where it crosses or lies in it."""
    one, other = line
    if crosses(one, other, low, high):
        return 0.0
    corners = (low, (high[0], low[1]), high, (low[0], high[1]))
    return min(
        _from_field(one, low, high),
        _from_field(other, low, high),
        *(_from_line(corner, one, other) for corner in corners),
    )


def crosses(one: Point, other: Point, low: Point, high: Point) -> bool:
    """Whether a line goes through a field: what is left of it between each pair of its sides."""
    begin, end = 0.0, 1.0
    for axis in (0, 1):
        way = other[axis] - one[axis]
        if abs(way) < 1e-15:
            if not low[axis] <= one[axis] <= high[axis]:
                return False
            continue
        first, last = sorted(((low[axis] - one[axis]) / way, (high[axis] - one[axis]) / way))
        begin, end = max(begin, first), min(end, last)
    return begin <= end
