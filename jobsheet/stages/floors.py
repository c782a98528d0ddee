"""Floors that steps, slots and pockets leave: a hole that is begun in one begins
there, not at the top of the work.
"""

from __future__ import annotations

import math

from jobsheet.model.lying import NORMALS, Lying
from jobsheet.model.shape import Edge, Groove, Hole, Recess, Sweep

#: Nearer than this to the wall of a floor is on the wall [m].
NEAR = 1e-6
Point = tuple[float, float]


def covers(shape: Sweep, corners: tuple[Point, ...], size: tuple[float, float, float], at: Point) -> bool:
    """Whether a place lies on the floor of a shape.

    Parameters
    ----------
    shape : Sweep
        A step, slot or pocket; anything else has no floor
    corners : tuple
        Its places from the left near corner of the work as it lay [m]
    size : tuple
        Length, width and height of that work as it lay [m]
    at : tuple
        The place, from the same corner [m]
    """
    x, y = at
    if isinstance(shape, Edge):
        along, across, _ = size
        inside = {"left": x, "right": along - x, "front": y, "rear": across - y}[shape.side]
        return inside < shape.width - NEAR
    if isinstance(shape, Recess):
        (cx, cy), *_ = corners
        return abs(x - cx) < shape.length / 2 - NEAR and abs(y - cy) < shape.width / 2 - NEAR
    return isinstance(shape, Groove) and _from_line(at, *corners) < shape.width / 2 - NEAR


def _from_line(at: Point, one: Point, other: Point) -> float:
    """How far a place lies from the line between the centres of two ends [m]."""
    (x1, y1), (x2, y2) = one, other
    long = (x2 - x1) ** 2 + (y2 - y1) ** 2
    share = ((at[0] - x1) * (x2 - x1) + (at[1] - y1) * (y2 - y1)) / long if long else 0.0
    share = min(max(share, 0.0), 1.0)
    return math.dist(at, (x1 + share * (x2 - x1), y1 + share * (y2 - y1)))


def from_corner(lie: Lying, point: tuple[float, float, float]) -> Point:
    """A point in the drawing's axes as distances from the left and near side of the work as it lies [m]."""
    found = []
    for face in (lie.left, lie.near):
        axis, outward = _axis(face)
        low, high = lie.box[axis]
        found.append(high - point[axis] if outward > 0 else point[axis] - low)
    return found[0], found[1]


def top_of(lie: Lying) -> float:
    """Where the face that is up lies on its axis of the drawing, counted outward [m]."""
    axis, outward = _axis(lie.up)
    return outward * lie.box[axis][1 if outward > 0 else 0]


def _axis(face: str) -> tuple[int, int]:
    return next((axis, part) for axis, part in enumerate(NORMALS[face]) if part)


class Floors:
    """The floors that the steps so far have left, each with how the work lay when it was cut."""

    def __init__(self) -> None:
        self._cut: list[tuple[Lying, Sweep, tuple[Point, ...], float]] = []

    def leave(self, lie: Lying, shape: Sweep, corners: tuple[Point, ...], depth: float) -> None:
        """A step, slot or pocket leaves a floor so deep below the top of the work as it lies [m]."""
        if isinstance(shape, Edge | Groove | Recess) and depth < lie.size[2] - NEAR:
            self._cut.append((lie, shape, corners, top_of(lie) - depth))

    def below(self, lie: Lying, shape: Sweep, corner: Point) -> float:
        """How far below the top of the work as it lies a hole begins at a place [m]; nought
        where there is no floor, or it is gone.
        """
        if not isinstance(shape, Hole) or not self._cut:
            return 0.0
        along, across = corner
        point = lie.in_stock(along, across)
        there = [
            level
            for other, cut, corners, level in self._cut
            if other.up == lie.up and covers(cut, corners, other.size, from_corner(other, point))
        ]
        return max(top_of(lie) - min(there), 0.0) if there else 0.0
