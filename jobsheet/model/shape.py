"""Shapes that an operation takes away, in set-up coordinates [m]: no modeller knows them here."""

from __future__ import annotations

from msgspec import Struct


class Slab(Struct, frozen=True):
    """A layer off the face that is up, over the whole of it."""

    depth: float


class Hole(Struct, frozen=True):
    """A round hole from the top: centre, diameter, depth of its straight part, point angle [rad].

    `depth` None goes through. A spotted cone has a straight part of nought.
    """

    x: float
    y: float
    diameter: float
    depth: float | None
    point_angle: float | None = None
    threaded: bool = False


Sweep = Slab | Hole
