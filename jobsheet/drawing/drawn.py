"""Drawings as values: lines, ellipses and text, which window and sheet each paint with their own pen.

All sizes are in points of the page, x to the right and y down, as one reads. A line's weight is a name
(`cut`, `outline`, `thin` …), which the painter knows the width of, or a number of points where a sign
is made to scale. Inks are names too; paper has black and one grey for all of them.
"""

from __future__ import annotations

from msgspec import Struct

Point = tuple[float, float]

#: Line weights by name [points], and dashes by name: what window, sheet and files have in common.
WEIGHTS: dict[str, float] = {
    "frame": 1.6, "section": 1.2, "row": 0.6, "cut": 2.6, "outline": 1.0, "dim": 0.7, "thin": 0.5,
}  # fmt: skip
DASHES: dict[str, tuple[float, ...]] = {
    "removed": (4, 2.5), "pencil": (3, 2), "fence": (4, 2.4), "centre": (7, 2, 1.5, 2),
}  # fmt: skip


class Line(Struct, frozen=True):
    """Straight strokes from point to point; closed and filled it is a face."""

    points: tuple[Point, ...]
    weight: str | float = "outline"
    dash: str = ""
    closed: bool = False
    fill: str = ""
    ink: str = "ink"


class Ellipse(Struct, frozen=True):
    """An ellipse by its half axes; `turn` is the angle of the first of them [rad], clockwise on the page."""

    x: float
    y: float
    a: float
    b: float
    turn: float = 0.0
    weight: str | float = "outline"
    dash: str = ""
    fill: str = ""
    ink: str = "ink"


class Text(Struct, frozen=True):
    """Words on a base line; `anchor` says which end stands at x: `start`, `middle` or `end`.

    `size` overrides the style's, for text that was made smaller to fit.
    """

    x: float
    y: float
    words: str
    style: str = "label"
    anchor: str = "start"
    size: float | None = None
    ink: str = ""


class Photo(Struct, frozen=True):
    """A photograph in a box, by its content (the SHA-256 of its bytes); only paper has it, a
    drawing by itself shows its frame.
    """

    x: float
    y: float
    width: float
    height: float
    content: str


Item = Line | Ellipse | Text | Photo


class Drawing(Struct, frozen=True):
    """Items in a box of that width and height."""

    width: float
    height: float
    items: tuple[Item, ...] = ()
