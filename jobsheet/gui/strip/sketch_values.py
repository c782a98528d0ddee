"""What a quick sketch is made of: blocks that are cut, strokes and sizes."""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.model.shape import Hole

Point = tuple[float, float]
COS30, SIN30 = math.cos(math.radians(30)), 0.5


def seen(x: float, y: float, z: float) -> Point:
    """Where a point of the work is seen; y of the picture runs down."""
    return (x + y) * COS30, (x - y) * SIN30 - z


class Stroke(Struct, frozen=True):
    """Some lines: `thin`, `heavy` or `dashed`; closed ones may be filled with
    the face's colour or hatched.
    """

    points: tuple[Point, ...]
    line: str = "thin"
    closed: bool = False
    filled: bool = False
    hatched: bool = False


class Block(Struct, frozen=True):
    """The work as held: its size now and the holes in its top, in places from its left front corner [m].

    Of work that is no box `section` has the rings of its outline, seen along the direction that it is drawn
    out `along` (0 to the right, 1 away, 2 up), in the two others in their order.
    """

    length: float
    width: float
    height: float
    holes: tuple[Hole, ...] = ()
    section: tuple[tuple[Point, ...], ...] = ()
    along: int = 2


class Size(Struct, frozen=True):
    """A size that this step makes: the point it is written at, its value [m],
    and whether it is a diameter.
    """

    at: Point
    value: float
    round: bool = False


class Sketch(Struct, frozen=True):
    """The strokes of one stage, back to front, the box they lie in (left,
    top, right, bottom), and its sizes.
    """

    strokes: tuple[Stroke, ...]
    box: tuple[float, float, float, float]
    sizes: tuple[Size, ...] = ()
