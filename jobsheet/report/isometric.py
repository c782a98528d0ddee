"""The stock in isometric, seen from front, right and above, with its sizes; and the
datum letters of every such picture.
"""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.drawing.drawn import Drawing, Item, Line, Point, Text
from jobsheet.drawing.making import arrow, box
from jobsheet.model.lying import Box

_COS, _SIN = math.cos(math.radians(30)), 0.5


def seen(point: tuple[float, float, float]) -> Point:
    """A place of the stock on the page: x to the right and down, y to the right and up, z up."""
    x, y, z = point
    return (x + y) * _COS, (x - y) * _SIN - z


class View(Struct, frozen=True):
    """The scale and shift that put a box into a picture."""

    scale: float
    dx: float
    dy: float

    def at(self, point: tuple[float, float, float]) -> Point:
        """A place of the stock on the picture."""
        x, y = seen(point)
        return x * self.scale + self.dx, y * self.scale + self.dy


def fitted(work: Box, width: float, height: float, margin: tuple[float, float, float, float]) -> View:
    """The largest view of a box inside a picture; `margin` is left, top, right, bottom [points]."""
    corners = [seen((x, y, z)) for x in work[0] for y in work[1] for z in work[2]]
    left, right = min(x for x, _ in corners), max(x for x, _ in corners)
    top, bottom = min(y for _, y in corners), max(y for _, y in corners)
    room = width - margin[0] - margin[2], height - margin[1] - margin[3]
    scale = min(room[0] / (right - left), room[1] / (bottom - top))
    return View(
        scale,
        margin[0] + (room[0] - (right - left) * scale) / 2 - left * scale,
        margin[1] + (room[1] - (bottom - top) * scale) / 2 - top * scale,
    )


def faces(view: View, work: Box) -> tuple[Item, ...]:
    """The three faces one sees, each with its outline."""
    (x0, x1), (y0, y1), (z0, z1) = work
    outlines = (
        ((x0, y0, z1), (x1, y0, z1), (x1, y1, z1), (x0, y1, z1)),
        ((x0, y0, z0), (x1, y0, z0), (x1, y0, z1), (x0, y0, z1)),
        ((x1, y0, z0), (x1, y1, z0), (x1, y1, z1), (x1, y0, z1)),
    )
    return tuple(
        Line(tuple(view.at(point) for point in outline), "outline", closed=True, fill="paper")
        for outline in outlines
    )


def stock_picture(work: Box, sizes: tuple[str, str, str], width: float, height: float) -> Drawing:
    """The stock with its three sizes, as they were typed: length, width, height."""
    view = fitted(work, width, height, (26, 8, 42, 24))
    return Drawing(width, height, (*faces(view, work), *sizes_beside(view, work, sizes)))


def sizes_beside(view: View, work: Box, sizes: tuple[str, str, str]) -> list[Item]:
    """Length, width and height beside a box; nothing for a size that is an empty text."""
    (x0, x1), (y0, y1), (z0, z1) = work
    away = 13 / view.scale
    ends = (
        ((x0, y0 - away, z0), (x1, y0 - away, z0), sizes[0], (-8.0, 9.0), "end"),
        ((x1 + away, y0, z0), (x1 + away, y1, z0), sizes[1], (8.0, 9.0), "start"),
        (
            (x1 + away * 0.7, y1 + away * 0.7, z0),
            (x1 + away * 0.7, y1 + away * 0.7, z1),
            sizes[2],
            (5.0, 3.5),
            "start",
        ),
    )
    items: list[Item] = []
    for start, end, words, shift, anchor in ends:
        if not words:
            continue
        first, last = view.at(start), view.at(end)
        items += arrow(first, last, both=True)
        items.append(
            Text(
                (first[0] + last[0]) / 2 + shift[0],
                (first[1] + last[1]) / 2 + shift[1],
                words,
                "size",
                anchor,
            )
        )
    return items


#: Where a letter stands beside the work, from the place on the face it
#: names [points]; hidden faces from their edge.
_LEADERS: dict[str, tuple[tuple[float, float, float], Point]] = {
    "front": ((0.22, 0.0, 0.5), (-16.0, 20.0)),
    "right": ((1.0, 0.7, 0.45), (20.0, 16.0)),
    "top": ((0.72, 0.82, 1.0), (14.0, -18.0)),
    "left": ((0.0, 0.0, 0.75), (-24.0, -8.0)),
    "rear": ((0.55, 1.0, 1.0), (-6.0, -18.0)),
    "bottom": ((0.6, 0.0, 0.0), (-8.0, 20.0)),
}


#: The same where sizes stand beside the work: clear of them.
_CLEAR = {
    "front": ((0.07, 0.0, 0.55), (-28.0, 8.0)),
    "left": ((0.0, 0.45, 1.0), (-20.0, -13.0)),
    "bottom": ((1.0, 0.0, 0.0), (0.0, 21.0)),
}


def datum_letters(
    view: View, work: Box, datums: tuple[tuple[str, str], ...], *, sized: bool = False
) -> list[Item]:
    """The letters of faces, each tied to its face; `sized` where sizes stand beside the work."""
    leaders = _LEADERS | _CLEAR if sized else _LEADERS
    items: list[Item] = []
    used: dict[str, int] = {}
    for letter, face in datums:
        part, shift = leaders[face]
        x, y, z = (low + (high - low) * share for (low, high), share in zip(work, part, strict=True))
        tip = view.at((x, y, z))
        again = used.get(face, 0)
        used[face] = again + 1
        middle = tip[0] + shift[0] + 18 * again, tip[1] + shift[1]
        items += datum_letter(letter, middle, tip)
    return items


def datum_letter(letter: str, middle: Point, tip: Point) -> list[Item]:
    """A boxed letter tied to its face by a line with a filled head."""
    half_wide, half_high = max(5.5, 3.8 * len(letter)), 6.0
    x, y = middle
    reach = max(abs(tip[0] - x) / half_wide, abs(tip[1] - y) / half_high, 1.0)
    start = (x + (tip[0] - x) / reach, y + (tip[1] - y) / reach)
    return [
        *arrow(start, tip, weight="dim", head=5.5),
        Line(
            box(x - half_wide, y - half_high, 2 * half_wide, 2 * half_high),
            "outline",
            closed=True,
            fill="paper",
        ),
        Text(x, y + 3.3, letter, "mark", "middle"),
    ]
