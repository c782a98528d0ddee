"""Points from above with their numbers: each number beside its point where nothing else stands,
and crowds drawn once more, larger.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.drawing.drawn import Ellipse, Item, Line, Text
from jobsheet.drawing.making import box
from jobsheet.report.points import Point

Spot = tuple[float, float]
Room = tuple[float, float, float, float]
#: The number of a point [points]: usual, and the smallest that is still read at arm's length.
USUAL, LEAST = 8.5, 7.5
#: Of a letter's size: how wide a bold figure is, how high; and the gap round a number [points].
WIDE, TALL, GAP = 0.7, 0.73, 1.0
#: A point is drawn no smaller than that [points].
DOT = 1.8
#: A detail with its frame and name takes that share of a picture's width, and of
#: its height all but so much [points].
SHARE, LESS = 0.36, 12.0
#: A picture that is narrower has no room for one [points].
ROOMY = 180.0
#: Points that stand nearer than this beside their own sizes run into one another [points].
APART = 3.0
#: Where words go that have no room in their place: the nearest that is free [points, down the page].
ASIDE = tuple(
    (across, down)
    for far in (1, 2, 3)
    for across, down in (
        (0.0, -13.0 * far), (0.0, 13.0 * far), (22.0 * far, -9.0), (22.0 * far, 9.0), (-22.0 * far, -9.0), (-22.0 * far, 9.0),
    )
)  # fmt: skip
#: So far out of its points a detail goes, as a share of its size, and how many details a picture has.
ROUND, DETAILS = 0.16, 2


def numbered(
    points: tuple[Point, ...],
    spots: dict[int, Spot],
    scale: float,
    *,
    all_of: bool = False,
    within: Room | None = None,
    without: frozenset[int] = frozenset(),
) -> tuple[list[Item], list[Point]]:
    """Signs and numbers of points at their spots on the picture, and the points whose
    number has no room beside any other.

    Parameters
    ----------
    spots : dict of int to Spot
        Where each point's number says it stands [points]
    scale : float
        Of the picture [points a metre]
    all_of : bool
        Whether points that run into one another have their numbers too, where
        there is room, and short crosses
    within : Room, optional
        Where the work is: a number stands on it where it can, else on a white
        ground, for beside it jaws are hatched
    without : frozenset of int
        Points that have their numbers elsewhere: only their signs are drawn
    """
    arms = 0.5 if all_of else 3.0
    items: list[Item] = []
    taken: list[Room] = []
    for point in points:
        x, y = spots[point.number]
        reach = max(point.diameter / 2 * scale, DOT) + arms
        items += [
            Line(((x - reach, y), (x + reach, y)), "dim"),
            Line(((x, y - reach), (x, y + reach)), "dim"),
            Ellipse(x, y, reach - arms, reach - arms, weight=1.7),
        ]
        taken += [
            (x - reach, y - 0.4, x + reach, y + 0.4),
            (x - 0.4, y - reach, x + 0.4, y + reach),
            (x - reach + arms - 0.8, y - reach + arms - 0.8, x + reach - arms + 0.8, y + reach - arms + 0.8),
        ]
    left_out = []
    for point in points:
        if point.number in without:
            continue
        if not all_of and _touched(point, points, spots, scale):
            left_out.append(point)
            continue
        found = _place(point, spots, taken, scale, within, nearest=all_of)
        if found is None:
            left_out.append(point)
            continue
        room, text = found
        taken.append(room)
        if within is not None and not _lies_in(room, within):
            items.append(
                Line(
                    box(room[0], room[1], room[2] - room[0], room[3] - room[1]),
                    0.0,
                    closed=True,
                    fill="paper",
                )
            )
        items.append(text)
    return items, left_out


def _touched(point: Point, points: tuple[Point, ...], spots: dict[int, Spot], scale: float) -> bool:
    """Whether another point stands so near that their signs run into one another."""
    x, y = spots[point.number]
    own = max(point.diameter / 2 * scale, DOT) + APART
    return any(
        other.number != point.number
        and math.hypot(spots[other.number][0] - x, spots[other.number][1] - y)
        < own + max(other.diameter / 2 * scale, DOT)
        for other in points
    )


def _place(
    point: Point,
    spots: dict[int, Spot],
    taken: list[Room],
    scale: float,
    within: Room | None,
    *,
    nearest: bool,
) -> tuple[Room, Text] | None:
    """The first of the places round a point that is free, on the work before beside it; `nearest` where no
    other point may stand nearer to it, for there the number would be read as that one's.
    """
    free = [
        place
        for place in _places(point, spots, scale)
        if not any(_meet(place[0], other) for other in taken)
        and (not nearest or _nearest_to(place[0], spots) == point.number)
    ]
    on_it = [place for place in free if within is None or _lies_in(place[0], within)]
    return next(iter(on_it or free), None)


def _nearest_to(room: Room, spots: dict[int, Spot]) -> int:
    x, y = (room[0] + room[2]) / 2, (room[1] + room[3]) / 2
    return min(spots, key=lambda number: math.dist(spots[number], (x, y)))


def _places(point: Point, spots: dict[int, Spot], scale: float) -> Iterator[tuple[Room, Text]]:
    """The places round a point, in the usual size and then in the smallest: towards the middle first."""
    x, y = spots[point.number]
    middle = sum(one for one, _ in spots.values()) / len(spots)
    radius = max(point.diameter / 2 * scale, DOT)
    inward = 1 if x <= middle + 0.1 else -1
    words = str(point.number)
    for letters in (USUAL, LEAST):
        wide, tall = WIDE * letters * len(words), TALL * letters
        aside = radius * 0.7 + 2.6
        for way, below in ((inward, False), (inward, True), (-inward, False), (-inward, True)):
            base = y + radius + tall + 1.8 if below else y - radius - 1.8
            start = x + aside if way > 0 else x - aside - wide
            room = (start - GAP, base - tall - GAP, start + wide + GAP, base + GAP)
            yield room, Text(start if way > 0 else start + wide, base, words, "mark",
                             "start" if way > 0 else "end", letters)  # fmt: skip


def _lies_in(one: Room, other: Room) -> bool:
    return other[0] <= one[0] and other[1] <= one[1] and one[2] <= other[2] and one[3] <= other[3]


def _meet(one: Room, other: Room) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def on_their_points(points: list[Point], spots: dict[int, Spot]) -> list[Item]:
    """Numbers that have no room beside their points stand on them, in white, or with a line to them where
    another stands there: none is left out, and none over another.
    """
    items: list[Item] = []
    taken: list[Room] = []
    for point in points:
        x, y = spots[point.number]
        others = [spot for number, spot in spots.items() if number != point.number]
        wide, tall = WIDE * LEAST * len(str(point.number)) + 1, TALL * LEAST + 1
        rooms = (
            (dx, dy, (x + dx - wide / 2, y + dy - tall / 2, x + dx + wide / 2, y + dy + tall / 2))
            for dx, dy in ((0.0, 0.0), *ASIDE)
        )
        dx, dy, room = next(
            (
                place
                for place in rooms
                if not any(_meet(place[2], other) for other in taken)
                and not any(_lies_in((*spot, *spot), place[2]) for spot in others)
            ),
            (0.0, 0.0, (x - wide / 2, y - tall / 2, x + wide / 2, y + tall / 2)),
        )
        taken.append(room)
        if dx or dy:
            items.append(Line(((x, y), (x + dx, y + dy)), "dim"))
        items.append(Line(box(*room[:2], wide, tall), 0.0, closed=True, fill="paper"))
        items.append(Text(x + dx, y + dy + LEAST * TALL / 2, str(point.number), "mark", "middle", LEAST))
    return items


def side_of(width: float, height: float) -> float:
    """How large a detail is on a picture of that size [points]; 0 where it has no room for one."""
    return min(SHARE * width, height - LESS) if width >= ROOMY else 0.0


def crowds(
    points: tuple[Point, ...], spots: dict[int, Spot], left_out: list[Point]
) -> list[tuple[Point, ...]]:
    """The crowds of points whose numbers have no room: with each of these whatever stands
    near it, the largest crowds first.
    """
    near = 1.4 * USUAL
    groups: list[set[int]] = []
    for point in left_out:
        x, y = spots[point.number]
        crowd = {
            point.number
            for point in points
            if math.hypot(spots[point.number][0] - x, spots[point.number][1] - y) < near
        } | {point.number}
        for other in [group for group in groups if group & crowd]:
            groups.remove(other)
            crowd |= other
        groups.append(crowd)
    groups.sort(key=lambda group: (-len(group), min(group)))
    return [tuple(point for point in points if point.number in crowd) for crowd in groups]


def detail(
    crowd: tuple[Point, ...], spots: dict[int, Spot], name: str, corner: Spot, scale: float, side: float
) -> tuple[list[Item], Room]:
    """A crowd once more in a square of its own at that corner, its side so long; and the
    room that it shows on the picture.

    What the square shows is to scale in itself; how much larger it is stands under it.
    """
    xs, ys = zip(*(spots[point.number] for point in crowd), strict=True)
    radius = max(max(point.diameter / 2 * scale, DOT) for point in crowd)
    size = max(max(xs) - min(xs), max(ys) - min(ys)) + 2 * radius
    size *= 1 + 2 * ROUND
    middle = (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2
    shown = (middle[0] - size / 2, middle[1] - size / 2, middle[0] + size / 2, middle[1] + size / 2)
    room = side - 10.0
    larger = (room - 2 * (USUAL + 3)) / (size / (1 + 2 * ROUND))
    centre = corner[0] + side / 2, corner[1] + room / 2
    own = {
        point.number: (
            centre[0] + (spots[point.number][0] - middle[0]) * larger,
            centre[1] + (spots[point.number][1] - middle[1]) * larger,
        )
        for point in crowd
    }
    items, over = numbered(crowd, own, scale * larger, all_of=True)
    items += on_their_points(over, own)
    frame = Line(box(corner[0] + 5, corner[1], room, room), "outline", closed=True, fill="paper")
    words = Text(centre[0], corner[1] + side - 1.5, f"{name}, {larger:.2g} × larger", "caption", "middle")
    return [frame, *items, words], shown
