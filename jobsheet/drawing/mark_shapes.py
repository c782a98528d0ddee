"""The signs of verdicts and severities, and of how work is held: on a grid of 16, to any size.

Verdicts are one family, a ring and an upright stroke, the capacity: open, dashed,
punched, touching it, cut through by it.

They are told apart by shape alone; the files in `resources/icons` show the same shapes to the window.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from jobsheet.drawing.drawn import Drawing, Ellipse, Item, Line, Point
from jobsheet.drawing.making import box, hatched, moved
from jobsheet.remembered import remembered

GRID = 16.0


def _face(*points: Point) -> Line:
    return Line(points, 0.0, closed=True, fill="ink")


def _ring(x: float, radius: float, weight: float, k: float) -> Ellipse:
    return Ellipse(x * k, 8 * k, radius * k, radius * k, weight=weight * k)


def _cut_before(k: float) -> tuple[Item, ...]:
    punch = Ellipse(8 * k, 8 * k, 2.3 * k, 2.3 * k, weight=0.0, fill="ink")
    return _ring(8, 5.9, 2, k), punch


def _expected(k: float) -> tuple[Item, ...]:
    return (_ring(8, 5.9, 1.5, k),)


def _not_tried(k: float) -> tuple[Item, ...]:
    """A ring in eight strokes with as many gaps."""
    found = []
    for part in range(8):
        arc = [math.radians(45 * part + 27 * step / 4) for step in range(5)]
        points = tuple((8 + 5.9 * math.cos(turn), 8 + 5.9 * math.sin(turn)) for turn in arc)
        found.append(Line(_at(points, k), 1.5 * k))
    return tuple(found)


def _tight(k: float) -> tuple[Item, ...]:
    return _ring(6.4, 5.3, 1.8, k), Line(_at(((13.3, 1), (13.3, 15)), k), 2.4 * k)


def _beyond(k: float) -> tuple[Item, ...]:
    return _ring(8, 5.4, 2.4, k), Line(_at(((8, 0), (8, 16)), k), 2.8 * k)


def _hazard(k: float) -> tuple[Item, ...]:
    """The general warning sign: triangle and exclamation mark, ISO 7010 W001, in ink on paper."""
    triangle = Line(_at(((8, 1.6), (15.1, 14.3), (0.9, 14.3)), k), 1.7 * k, closed=True)
    strokes = [Line(_at(((8, top), (8, end)), k), 1.9 * k) for top, end in ((5.6, 10), (11.3, 13))]
    return triangle, *strokes


def _scrap(k: float) -> tuple[Item, ...]:
    full = ((1.2, 1.2), (8.8, 1.2), (6.6, 5.6), (9.6, 8.2), (6.2, 14.8), (1.2, 14.8))
    empty = ((11.2, 1.2), (14.8, 1.2), (14.8, 14.8), (8.9, 14.8), (12.2, 8.0), (9.2, 5.4))
    return _face(*_at(full, k)), Line(_at(empty, k), 1.4 * k, closed=True)


def _rework(k: float) -> tuple[Item, ...]:
    """A square of which one corner is hatched: that much is to be cut again."""
    square = Line(_at(box(1.7, 1.7, 12.6, 12.6), k), 1.6 * k, closed=True)
    strokes = [Line(_at(((x, 1.7), (14.3, 16 - x)), k), 1.5 * k) for x in (4.4, 7.0, 10.0, 13.0)]
    return square, *strokes


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


def _first_cut(k: float) -> tuple[Item, ...]:
    """A dashed ring, the cutter, and an arrow out of its middle, the feed."""
    found = []
    for part in range(6):
        arc = [math.radians(60 * part + 38 * step / 3) for step in range(4)]
        found.append(Line(_at(tuple((5.5 + 5 * math.cos(t), 8 + 5 * math.sin(t)) for t in arc), k), 1.3 * k))
    return (
        *found,
        Line(_at(((5.5, 8), (12, 8)), k), 1.5 * k),
        _face(*_at(((10.8, 4.6), (16, 8), (10.8, 11.4)), k)),
    )


def _at(points: tuple[Point, ...], k: float) -> tuple[Point, ...]:
    return tuple((x * k, y * k) for x, y in points)


_MARKS: dict[str, Callable[[float], tuple[Item, ...]]] = {
    "cut before": _cut_before, "expected": _expected, "not tried": _not_tried, "tight": _tight, "beyond": _beyond,
    "hazard": _hazard, "scrap": _scrap, "rework": _rework, "habit": _habit,
    "rests here": _rests, "clamped": _clamped, "cut now": _cut_now, "zero": _zero, "jaw": _jaw,
    "datum": _datum, "stop": _stop, "first cut": _first_cut,
}  # fmt: skip

#: Every sign there is, by its word.
MARKS = tuple(_MARKS)


@remembered(64)
def mark(name: str, size: float) -> Drawing:
    """A sign in a square of that size; an empty one for a word that has none (`unknown`)."""
    draw = _MARKS.get(name)
    return Drawing(size, size, draw(size / GRID) if draw else ())


def mark_at(name: str, size: float, x: float, y: float) -> tuple[Item, ...]:
    """A sign's items with its upper left corner at a place."""
    return moved(mark(name, size).items, x, y)
