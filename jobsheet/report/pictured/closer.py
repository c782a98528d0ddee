"""Where cuts or points crowd on the picture from above: the place once more, so large that every wall has
its size and every point its number.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from itertools import combinations

from msgspec import Struct

from jobsheet.drawing.drawn import Drawing, Item, Line
from jobsheet.drawing.making import box
from jobsheet.operations.shared.common import millimetres
from jobsheet.report.pictured.cut_off import Frame, cut_off
from jobsheet.report.pictured.names_put import Names
from jobsheet.report.pictured.near_walls import Outlined, Wall, near_walls
from jobsheet.report.pictured.numbered import LEAST, TALL, WIDE
from jobsheet.report.points import Point

Spot = tuple[float, float]
Placed = tuple[Point, Spot]
#: A wall that is thinner than that on the small picture is drawn larger [points].
NARROW = 2.5
#: Two points that crowd have their centres so far apart on the larger picture [points].
APART = 20.0
#: How large one of these pictures is: where it is the only one, where there are two [points]; with a rim all round.
ROOM, HALF, RIM = (330.0, 112.0), (168.0, 112.0), 12.0
#: So many times larger is enough where no wall needs more, and the most; so many places a set-up has room for.
ENOUGH, LARGEST, MOST = 5.0, 10.0, 2
#: Corners of a round end.
_ROUND = 24


class Crowd(Struct, frozen=True, kw_only=True):
    """Cuts and points that stand close: their box on the work, where they are closest [m], and the
    scale that tells them apart [points a metre].
    """

    low: Spot
    high: Spot
    at: Spot
    scale: float
    numbers: frozenset[int] = frozenset()
    walls: tuple[Wall, ...] = ()


class Closer(Struct, frozen=True, kw_only=True):
    """A place drawn larger: its picture, what it shows of the work [m], how many times larger, its points."""

    drawing: Drawing
    low: Spot
    high: Spot
    times: float
    numbers: frozenset[int]


def crowds_on(
    cuts: tuple[Outlined, ...], points: tuple[tuple[Placed, ...], ...], scale: float, units: str
) -> tuple[Crowd, ...]:
    """The places that a picture of that scale [points a metre] is too small for, the closest first.

    Parameters
    ----------
    points : tuple of tuple of (Point, Spot)
        Points whose numbers have no room, by crowds, with their places on the work [m]
    """
    crowds = [_of_wall(wall, units) for wall in near_walls(cuts, NARROW / scale)]
    crowds += [_of_points(*pair) for crowd in points for pair in combinations(crowd, 2)]
    merged: list[Crowd] = []
    for crowd in crowds:
        near = [each for each in merged if _overlap(each, crowd)]
        merged = [each for each in merged if each not in near]
        merged.append(_together([*near, crowd]))
    return tuple(sorted(merged, key=lambda each: -each.scale))


def _room_for(wall: Wall, units: str) -> float:
    """How thick a wall is drawn so that its size stands in it [points]."""
    across = abs(wall.end[0] - wall.start[0]) > abs(wall.end[1] - wall.start[1])
    return LEAST * (WIDE * len(_size(wall, units)) if across else TALL) + 4.0


def _has_room(wall: Wall, scale: float, units: str) -> bool:
    return wall.thick * scale > _room_for(wall, units) - 0.5


def _of_wall(wall: Wall, units: str) -> Crowd:
    """A wall is drawn so thick that its size stands in it."""
    lows, highs = zip(*((each.low, each.high) for each in wall.between), strict=True)
    return Crowd(
        low=(min(x for x, _ in lows), min(y for _, y in lows)),
        high=(max(x for x, _ in highs), max(y for _, y in highs)),
        at=wall.middle,
        scale=_room_for(wall, units) / wall.thick,
        walls=(wall,),
    )


def _of_points(one: Placed, other: Placed) -> Crowd:
    (point, (x, y)), (second, (x2, y2)) = one, other
    radius = max(point.diameter, second.diameter) / 2
    return Crowd(
        low=(min(x, x2) - radius, min(y, y2) - radius),
        high=(max(x, x2) + radius, max(y, y2) + radius),
        at=((x + x2) / 2, (y + y2) / 2),
        scale=APART / math.dist((x, y), (x2, y2)),
        numbers=frozenset((point.number, second.number)),
    )


def _overlap(crowd: Crowd, other: Crowd) -> bool:
    return all(crowd.low[axis] <= other.high[axis] and other.low[axis] <= crowd.high[axis] for axis in (0, 1))


def _together(crowds: list[Crowd]) -> Crowd:
    closest = max(crowds, key=lambda each: each.scale)
    return Crowd(
        low=(min(each.low[0] for each in crowds), min(each.low[1] for each in crowds)),
        high=(max(each.high[0] for each in crowds), max(each.high[1] for each in crowds)),
        at=closest.at,
        scale=closest.scale,
        numbers=frozenset().union(*(each.numbers for each in crowds)),
        walls=tuple(wall for each in crowds for wall in each.walls),
    )


def _size(wall: Wall, units: str) -> str:
    return millimetres(round(wall.thick, 5), units)[0]


def closer_views(
    crowds: tuple[Crowd, ...],
    cuts: tuple[Outlined, ...],
    points: tuple[Placed, ...],
    size: Spot,
    scale: float,
    units: str,
) -> tuple[Closer, ...]:
    """The crowds drawn larger, as many as there is room for, the closest first.

    Parameters
    ----------
    points : tuple of (Point, Spot)
        All points that lie on the work, with their places on it [m]
    size : Spot
        The work from above [m]
    scale : float
        Of the small picture [points a metre]
    """
    shown = crowds[:MOST]
    room = ROOM if len(shown) == 1 else HALF
    return tuple(_closer(crowd, cuts, points, size, scale, units, room) for crowd in shown)


def _closer(
    crowd: Crowd,
    cuts: tuple[Outlined, ...],
    points: tuple[Placed, ...],
    size: Spot,
    scale: float,
    units: str,
    room: Spot,
) -> Closer:
    spans = tuple(high - low for low, high in zip(crowd.low, crowd.high, strict=True))
    whole = min((room[axis] - 2 * RIM) / spans[axis] for axis in (0, 1))
    larger = min(max(min(whole, ENOUGH * scale), crowd.scale), LARGEST * scale)
    shown = tuple(min(room[axis] / larger, spans[axis] + 2 * RIM / larger) for axis in (0, 1))
    low = tuple(_begins(crowd, axis, shown[axis], RIM / larger) for axis in (0, 1))
    frame = Frame(left=low[0], low=low[1], wide=shown[0] * larger, high=shown[1] * larger, scale=larger)
    rim = ((0.0, 0.0), (size[0], 0.0), size, (0.0, size[1]))
    items: list[Item] = list(cut_off(frame, rim))
    for cut in cuts:
        items += cut_off(frame, tuple(_outline(cut)))
    names = Names(frame)
    for point, spot in points:
        items += names.put(spot, str(point.number))
    for spot, words in _steps(frame, cuts):
        items += names.put(spot, words)
    for wall in sorted(crowd.walls, key=lambda each: each.thick):
        items += names.put(wall.middle, _size(wall, units), aside=not _has_room(wall, larger, units))
    items.append(Line(box(0.0, 0.0, frame.wide, frame.high), "dim", closed=True))
    return Closer(
        drawing=Drawing(frame.wide, frame.high, tuple(items)),
        low=(low[0], low[1]),
        high=(low[0] + shown[0], low[1] + shown[1]),
        times=larger / scale,
        numbers=crowd.numbers,
    )


def _begins(crowd: Crowd, axis: int, shown: float, rim: float) -> float:
    """Where the picture begins along one axis [m]: the whole crowd in its middle, else round where it is closest."""
    low, high = crowd.low[axis] - rim, crowd.high[axis] + rim
    if high - low <= shown + 1e-9:
        return (low + high - shown) / 2
    return min(max(crowd.at[axis] - shown / 2, low), high - shown)


def _outline(cut: Outlined) -> Iterator[Spot]:
    """The cut from above, its round ends in short lines, all the way round."""
    spine = cut.spine if len(cut.spine) > 2 else (cut.spine[0], cut.spine[-1])
    count = len(spine)
    for number, (x, y) in enumerate(spine):
        before, after = spine[number - 1], spine[(number + 1) % count]
        first, last = _way_out(before, (x, y)), _way_out((x, y), after)
        if count == 2:  # a place, or a line with its round ends
            first, last = (
                (first, first + math.pi)
                if spine[0] != spine[1]
                else (number * math.pi, (number + 1) * math.pi)
            )
        turn = (last - first) % (2 * math.pi)
        for step in range(_ROUND + 1):
            angle = first + turn * step / _ROUND
            yield x + cut.radius * math.cos(angle), y + cut.radius * math.sin(angle)


def _way_out(start: Spot, end: Spot) -> float:
    """The direction to the right of a line, which is outward where its outline goes round to the left [rad]."""
    return math.atan2(end[1] - start[1], end[0] - start[0]) - math.pi / 2


def _steps(frame: Frame, cuts: tuple[Outlined, ...]) -> Iterator[tuple[Spot, str]]:
    """Every slot, pocket and edge that can be seen has its steps in its middle."""
    by_middle: dict[Spot, list[int]] = {}
    for cut in cuts:
        if cut.is_hole:
            continue
        low = tuple(max(cut.low[axis], frame.begins[axis]) for axis in (0, 1))
        high = tuple(min(cut.high[axis], frame.ends[axis]) for axis in (0, 1))
        if all(high[axis] - low[axis] > 2 * LEAST / frame.scale for axis in (0, 1)):
            middle = round((low[0] + high[0]) / 2, 5), round((low[1] + high[1]) / 2, 5)
            by_middle.setdefault(middle, []).append(cut.step)
    for middle, steps in by_middle.items():
        numbers = ", ".join(str(step) for step in dict.fromkeys(steps))
        yield middle, f"step{'s' if ',' in numbers else ''} {numbers}"
