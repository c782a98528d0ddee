"""The signs of verdicts and severities, and of how work is held: on a grid of 16, to any size.

They are told apart by shape alone; the files in `resources/icons` show the same shapes to the window.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from jobsheet.drawing.drawn import Drawing, Ellipse, Item, Line, Point
from jobsheet.drawing.making import box, hatched, moved

GRID = 16.0


def _face(*points: Point) -> Line:
    return Line(points, 0.0, closed=True, fill="ink")


def _cut_before(k: float) -> tuple[Item, ...]:
    disc = Ellipse(8 * k, 8 * k, 6.6 * k, 6.6 * k, weight=0.0, fill="ink")
    return disc, Ellipse(8 * k, 8 * k, 2 * k, 2 * k, weight=0.0, fill="paper")


def _expected(k: float) -> tuple[Item, ...]:
    return (Ellipse(8 * k, 8 * k, 5.9 * k, 5.9 * k, weight=1.5 * k),)


def _tight(k: float) -> tuple[Item, ...]:
    left = ((0.8, 2.2), (7.1, 8.0), (0.8, 13.8))
    right = tuple((16 - x, y) for x, y in left)
    return _face(*_at(left, k)), _face(*_at(right, k))


def _beyond(k: float) -> tuple[Item, ...]:
    fence = [Line(_at(((10, top), (10, end)), k), 2.4 * k) for top, end in ((1, 5), (11, 15))]
    head = ((0, 6.6), (9.8, 6.6), (9.8, 3.4), (16, 8), (9.8, 12.6), (9.8, 9.4), (0, 9.4))
    return *fence, _face(*_at(head, k))


def _hazard(k: float) -> tuple[Item, ...]:
    plate = (
        (5.2, 0.7),
        (10.8, 0.7),
        (15.3, 5.2),
        (15.3, 10.8),
        (10.8, 15.3),
        (5.2, 15.3),
        (0.7, 10.8),
        (0.7, 5.2),
    )
    strokes = [
        Line(_at(((8, top), (8, end)), k), 2.1 * k, ink="paper") for top, end in ((3.6, 9.3), (11, 12.9))
    ]
    return _face(*_at(plate, k)), *strokes


def _scrap(k: float) -> tuple[Item, ...]:
    full = ((1.2, 1.2), (8.8, 1.2), (6.6, 5.6), (9.6, 8.2), (6.2, 14.8), (1.2, 14.8))
    empty = ((11.2, 1.2), (14.8, 1.2), (14.8, 14.8), (8.9, 14.8), (12.2, 8.0), (9.2, 5.4))
    return _face(*_at(full, k)), Line(_at(empty, k), 1.4 * k, closed=True)


def _rework(k: float) -> tuple[Item, ...]:
    bend = [
        (10 + 4 * math.sin(turn), 8.2 - 4 * math.cos(turn))
        for turn in (math.pi * step / 10 for step in range(10, -1, -1))
    ]
    path = ((2.0, 12.2), *bend, (5.0, 4.2))
    return Line(_at(path, k), 2 * k), _face(*_at(((6.6, 0.4), (6.6, 8.0), (1.4, 4.2)), k))


def _habit(k: float) -> tuple[Item, ...]:
    sheet = ((1.5, 2.0), (14.5, 2.0), (14.5, 10.0), (10.5, 14.0), (1.5, 14.0))
    lines = [Line(_at(((4.2, y), (end, y)), k), 1.4 * k) for y, end in ((5.6, 11.8), (8.8, 8.8))]
    return Line(_at(sheet, k), 1.4 * k, closed=True), *lines


def _rests(k: float) -> tuple[Item, ...]:
    return (_face(*_at(((8, 1.5), (14.5, 14.5), (1.5, 14.5)), k)),)


def _clamped(k: float) -> tuple[Item, ...]:
    return Line(_at(((0, 8), (9, 8)), k), 2.6 * k), _face(*_at(((7.5, 3.0), (16, 8), (7.5, 13.0)), k))


def _cut_now(k: float) -> tuple[Item, ...]:
    return (Line(_at(((0, 8), (16, 8)), k), 4.2 * k),)


def _zero(k: float) -> tuple[Item, ...]:
    cross = [Line(_at(ends, k), 1.4 * k) for ends in (((0, 8), (16, 8)), ((8, 0), (8, 16)))]
    return Ellipse(8 * k, 8 * k, 5 * k, 5 * k, weight=1.4 * k), *cross


def _jaw(k: float) -> tuple[Item, ...]:
    outline = _at(box(0.7, 1.7, 14.6, 12.6), k)
    return *hatched(outline, apart=3.6 * k, weight=1.0 * k), Line(outline, 1.4 * k, closed=True)


def _datum(k: float) -> tuple[Item, ...]:
    return Line(_at(box(5, 3, 10, 10), k), 1.4 * k, closed=True), _face(*_at(((0, 8), (5, 5), (5, 11)), k))


def _stop(k: float) -> tuple[Item, ...]:
    return Ellipse(8 * k, 8 * k, 6 * k, 6 * k, weight=1.5 * k), Line(_at(((4, 8), (12, 8)), k), 2.4 * k)


def _at(points: tuple[Point, ...], k: float) -> tuple[Point, ...]:
    return tuple((x * k, y * k) for x, y in points)


_MARKS: dict[str, Callable[[float], tuple[Item, ...]]] = {
    "cut before": _cut_before, "expected": _expected, "tight": _tight, "beyond": _beyond,
    "hazard": _hazard, "scrap": _scrap, "rework": _rework, "habit": _habit,
    "rests here": _rests, "clamped": _clamped, "cut now": _cut_now, "zero": _zero, "jaw": _jaw,
    "datum": _datum, "stop": _stop,
}  # fmt: skip

#: Every sign there is, by its word.
MARKS = tuple(_MARKS)


def mark(name: str, size: float) -> Drawing:
    """A sign in a square of that size; an empty one for a word that has none (`unknown`)."""
    draw = _MARKS.get(name)
    return Drawing(size, size, draw(size / GRID) if draw else ())


def mark_at(name: str, size: float, x: float, y: float) -> tuple[Item, ...]:
    """A sign's items with its upper left corner at a place."""
    return moved(mark(name, size).items, x, y)
