"""The zero from above: the work between the jaws, where X and Y count from and which way, points by number."""

from __future__ import annotations

import itertools
import math
from collections.abc import Callable

from msgspec.structs import replace

from jobsheet.drawing.drawn import Drawing, Ellipse, Item, Line, Text
from jobsheet.drawing.making import arrow, box, hatched
from jobsheet.drawing.mark_shapes import mark_at
from jobsheet.holdings.placed import bodies_of
from jobsheet.model.held_work import Body
from jobsheet.model.job import SetUp
from jobsheet.model.lying import Lying
from jobsheet.model.machine import Machine
from jobsheet.report.holding_view import work_lines
from jobsheet.report.isometric import datum_letter
from jobsheet.report.points import Point
from jobsheet.stock.lying_stock import silhouette

#: Lines of the work from above, for the left lower corner on the picture and a scale.
Seen = Callable[[float, float, float], tuple[Item, ...]]
JAW = 11.0
#: From so many points on their numbers all stand on the same side.
CROWD = 8
#: So many points that lie beside the work are named; they are not drawn.
MOST = 4


def zero_picture(
    set_up: SetUp,
    lie: Lying,
    points: tuple[Point, ...],
    datums: tuple[tuple[str, str], ...],
    width: float,
    height: float,
    seen: Seen | None = None,
    machine: Machine | None = None,
    without: frozenset[str] = frozenset(),
) -> Drawing:
    """Seen from above, the person below: nothing here is turned the other way round.

    `seen` gives the lines of the work itself for a left lower corner and a scale [points a metre]; without it
    the work is its outline.
    """
    along, across, _ = lie.size
    left, right, bottom = 34.0, 40.0, 36.0
    # Room for a letter behind the far jaw, where there is one.
    top = 28.0 if any(lie.side(face) == "far" for _, face in datums) else 15.0
    scale = min((width - left - right) / along, (height - top - bottom) / across)
    wide, high = along * scale, across * scale
    x0 = left + (width - left - right - wide) / 2
    y0 = top + (height - top - bottom - high) / 2
    items: list[Item] = held_from_above(set_up, lie, machine, x0, y0, scale, wide, high, without, over=False)
    items += work_lines(silhouette(lie, 0, 1)[: 1 if seen is not None else None], x0, y0 + high, scale)
    if seen is not None:
        items += seen(x0, y0 + high, scale)
    items += held_from_above(set_up, lie, machine, x0, y0, scale, wide, high, without, over=True)
    size = _lettering(points, scale)
    for point in points:
        x, y = lie.from_corner(set_up, point.x, point.y)
        if 0 <= x <= along and 0 <= y <= across:
            items += _point(
                point,
                x0 + x * scale,
                y0 + high - y * scale,
                scale,
                size,
                inward=len(points) > CROWD or x < along / 2,
            )
    zero_x, zero_y = lie.zero(set_up)
    at = x0 + zero_x * scale, y0 + high - zero_y * scale
    items += mark_at("zero", 15.0, at[0] - 7.5, at[1] - 7.5)
    items += _letters(lie, datums, x0, y0, wide, high)
    items += _ways(set_up, width, height, x0, y0, wide, high)
    items.append(Text(width / 2, height - 2, "You stand here ▾", "strong", "middle"))
    return Drawing(width, height, tuple(items))


def beside_the_work(set_up: SetUp, lie: Lying, points: tuple[Point, ...]) -> str:
    """Which points lie beside the work and are not drawn; nothing where all lie on it."""
    along, across, _ = lie.size
    places = [(point.number, lie.from_corner(set_up, point.x, point.y)) for point in points]
    numbers = [str(number) for number, (x, y) in places if not (0 <= x <= along and 0 <= y <= across)]
    if not numbers:
        return ""
    more = f" and {len(numbers) - MOST} more" if len(numbers) > MOST else ""
    return f"not drawn, beside the work: {', '.join(numbers[:MOST])}{more}"


#: What lies so near to a side of the work is behind it [m].
_BEHIND = 1e-6
#: Parts that are seen beside or over the work from above; what lies under it is not.
_SEEN = (
    "fixed jaw",
    "moving jaw",
    "plate",
    "vee",
    "chuck",
    "dog",
    "tail",
    "strap",
    "stud",
    "screw",
    "stop",
    "bar",
)


def held_from_above(
    set_up: SetUp,
    lie: Lying,
    machine: Machine | None,
    x0: float,
    y0: float,
    scale: float,
    wide: float,
    high: float,
    without: frozenset[str],
    *,
    over: bool,
) -> list[Item]:
    """What holds the work, from above: jaws and stops beside it, or (`over`) the straps and screws on it.

    What reaches far is cut off so far beside the work that letters and arrows have their room.
    """
    items: list[Item] = []
    bodies = tuple(body for body in bodies_of(set_up, lie, machine) if body.part not in without)
    for body in _squeezed(bodies, lie, scale):
        if body.part not in _SEEN or (body.part in ("strap", "stud", "screw")) != over:
            continue
        left, right = (
            min(max(x0 + at * scale, x0 - JAW), x0 + wide + JAW) for at in (body.low[0], body.high[0])
        )
        far, near = (
            min(max(y0 + high - at * scale, y0 - JAW), y0 + high + JAW) for at in (body.high[1], body.low[1])
        )
        if right - left < 0.5 or near - far < 0.5:
            continue
        if body.axis == 2:
            # A round part keeps its shape and its middle; one that goes round the work ends where its jaws would.
            radius = min(body.size[0] / 2 * scale, max(wide, high) / 2 + JAW)
            across = (
                x0 + (body.low[0] + body.high[0]) / 2 * scale,
                y0 + high - (body.low[1] + body.high[1]) / 2 * scale,
            )
            items.append(Ellipse(*across, radius, radius, fill="paper"))
            continue
        outline = box(left, far, right - left, near - far)
        if over or body.part in ("stop", "bar"):
            items.append(Line(outline, "outline", closed=True, fill="paper"))
        else:
            items += [*hatched(outline, apart=3.4), Line(outline, "outline", closed=True)]
    return items


def _squeezed(bodies: tuple[Body, ...], lie: Lying, scale: float) -> tuple[Body, ...]:
    """The bodies, bar and moving jaw drawn thinner where both have no room beside the work: the jaw behind a bar is seen too."""
    if not any(body.part == "bar" and body.axis in (0, 1) for body in bodies):
        return bodies
    found = []
    for body in bodies:
        if body.part not in ("bar", "moving jaw"):
            found.append(body)
            continue
        low, high = list(body.low), list(body.high)
        for axis in (0, 1):
            whole = lie.size[axis]
            if high[axis] <= _BEHIND:
                low[axis], high[axis] = (
                    _thinner(-at, bodies, axis, scale, whole) * -1 for at in (low[axis], high[axis])
                )
            elif low[axis] >= whole - _BEHIND:
                low[axis], high[axis] = (
                    whole + _thinner(at - whole, bodies, axis, scale, whole) for at in (low[axis], high[axis])
                )
        found.append(replace(body, low=tuple(low), high=tuple(high)))
    return tuple(found)


def _thinner(beside: float, bodies: tuple[Body, ...], axis: int, scale: float, whole: float) -> float:
    """A distance beside the work, so that the whole of the moving jaw has room there [m]."""
    jaws = [body for body in bodies if body.part == "moving jaw"]
    far = max((max(-body.low[axis], body.high[axis] - whole) for body in jaws), default=0.0)
    return beside * min(1.0, JAW / (far * scale)) if far > 0 else beside


def _lettering(points: tuple[Point, ...], scale: float) -> float | None:
    """A smaller size for the numbers where points lie close together; None for the usual one."""
    near = min(
        (math.dist((one.x, one.y), (other.x, other.y)) for one, other in itertools.pairwise(points)),
        default=1.0,
    )
    return None if near * scale > 16 else max(7.0, near * scale * 0.42)


def _point(point: Point, x: float, y: float, scale: float, size: float | None, *, inward: bool) -> list[Item]:
    radius = max(point.diameter / 2 * scale, 1.8)
    reach = radius + 3
    return [
        Line(((x - reach, y), (x + reach, y)), "dim"),
        Line(((x, y - reach), (x, y + reach)), "dim"),
        Ellipse(x, y, radius, radius, weight=1.7),
        # The number stands towards the middle of the work, clear of the zero at its corner.
        Text(
            x + (radius + 3.5) * (1 if inward else -1),
            y - radius - 0.5,
            str(point.number),
            "mark",
            "start" if inward else "end",
            size,
        ),
    ]


def _letters(
    lie: Lying, datums: tuple[tuple[str, str], ...], x0: float, y0: float, wide: float, high: float
) -> list[Item]:
    """The datum letters of the four sides, clear of jaws and arrows."""
    places = {
        "far": ((x0 + wide * 0.5, y0 - JAW - 10), (x0 + wide * 0.5, y0)),
        "near": ((x0 - 22, y0 + high + JAW + 5), (x0 + wide * 0.1, y0 + high)),
        "left": ((x0 - 20, y0 + high * 0.68), (x0, y0 + high * 0.68)),
        "right": ((x0 + wide + 20, y0 + high * 0.68), (x0 + wide, y0 + high * 0.68)),
    }
    items: list[Item] = []
    used: dict[str, int] = {}
    for letter, face in datums:
        side = lie.side(face)
        if side in places:
            (x, y), tip = places[side]
            shift = 20.0 * used.get(side, 0)
            used[side] = used.get(side, 0) + 1
            items += datum_letter(letter, (x + shift, y), tip)
    return items


def _ways(
    set_up: SetUp, width: float, height: float, x0: float, y0: float, wide: float, high: float
) -> list[Item]:
    """The X and Y arrows as they count on the work as it lies now."""
    del height
    reach = min(40.0, wide * 0.5)
    start = x0 + (wide * 0.75 if set_up.zero.x_counts == "left" else wide * 0.35)
    end = start + (-reach if set_up.zero.x_counts == "left" else reach)
    y = y0 + high + JAW + 7
    right = set_up.zero.x_counts == "right"
    items: list[Item] = [*arrow((start, y), (end, y), weight=2.0, head=9.0)]
    items.append(Text(end + (4 if right else -4), y + 3.3, "X +", "strong", "start" if right else "end"))
    x = min(x0 + wide + 26, width - 10)
    long = min(30.0, max(high * 0.5, 18.0))
    middle = max(y0 + high * 0.3, 14 + long / 2)
    away = set_up.zero.y_counts == "away"
    first, last = (middle + long / 2, middle - long / 2) if away else (middle - long / 2, middle + long / 2)
    items += arrow((x, first), (x, last), weight=2.0, head=9.0)
    items.append(Text(x, middle - long / 2 - 4, "Y +", "strong", "middle"))
    return items
