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


class Edge(Struct, frozen=True):
    """Metal off one side of the work from the top down: `side` as it lies (left, right, front, rear) [m].

    `width` is measured from that side inward.
    """

    side: str
    width: float
    depth: float


class Groove(Struct, frozen=True):
    """A slot with round ends: centres of its ends, width and depth; `depth` None goes through [m]."""

    x1: float
    y1: float
    x2: float
    y2: float
    width: float
    depth: float | None


class Recess(Struct, frozen=True):
    """A pocket with rounded corners: centre, sizes along x and y, corner radius,
    depth; None goes through [m].
    """

    x: float
    y: float
    length: float
    width: float
    radius: float
    depth: float | None


class Bevel(Struct, frozen=True):
    """The top edges broken all round by a chamfer of this size [m]."""

    size: float


Sweep = Slab | Hole | Edge | Groove | Recess | Bevel
