"""The stock as a set-up sees it from its end: how wide and how much a layer off its top is, where it is no box."""

from __future__ import annotations

import math
from itertools import pairwise

from msgspec import Struct

Points = tuple[tuple[float, float], ...]


class Profile(Struct, frozen=True, kw_only=True):
    """An outline seen along the axis it is drawn out along, or from above. Lengths [m].

    `outer` has places across and down from the face that is up, `radius` and `bore` say a round bar or tube instead; none is said where
    one looks at it from above, as on the end of a bar that stands: then every layer has the same `area`. `cross` says along which of the two sides of the work, 0 for x
    and 1 for y, the places across lie. `gone` is what has come off the top.
    """

    area: float
    long: float = 0.0
    outer: Points = ()
    radius: float = 0.0
    bore: float = 0.0
    cross: int = 1
    gone: float = 0.0

    def layer(self, depth: float) -> float:
        """How much metal the next layer of that depth is [m³]."""
        low, high = self.gone, self.gone + depth
        if self.radius:
            wall = self.radius - self.bore
            inside = _of_circle(self.bore, low - wall, high - wall)
            return (_of_circle(self.radius, low, high) - inside) * self.long
        return _between(self.outer, low, high) * self.long if self.outer else self.area * depth

    def width(self, depth: float) -> float | None:
        """How wide that layer is at its widest [m]; None where it is as wide as the work."""
        if self.radius:
            # The layer is widest at its lower edge, or at the middle of the bar once it goes beyond.
            off = self.radius - min(max(self.gone, min(self.gone + depth, self.radius)), 2 * self.radius)
            return 2 * math.sqrt(self.radius**2 - off**2)
        if not self.outer:
            return None
        found = [across for across, _ in _clipped(self.outer, self.gone, self.gone + depth)]
        return max(found) - min(found) if found else 0.0


def _of_circle(radius: float, low: float, high: float) -> float:
    """The area of a circle between two depths below its top [m²], by its segments: r² acos((r - h) / r) - (r - h) √(2 r h - h²)."""

    def above(depth: float) -> float:
        deep = min(max(depth, 0.0), 2 * radius)
        off = radius - deep
        return radius**2 * math.acos(off / radius) - off * math.sqrt(max(2 * radius * deep - deep**2, 0.0))

    return above(high) - above(low) if radius > 0 else 0.0


def _between(points: Points, low: float, high: float) -> float:
    """The area of an outline between two depths [m²]."""
    kept = _clipped(points, low, high)
    ring = (*kept, kept[0]) if kept else ()
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise(ring))) / 2


def _clipped(points: Points, low: float, high: float) -> Points:
    """The part of an outline between two depths: cut by one line, then by the other (Sutherland and Hodgman, 1974)."""
    for level, keeps_deeper in ((low, True), (high, False)):
        made: list[tuple[float, float]] = []
        for one, other in pairwise((*points, points[0]) if points else ()):
            inside, next_inside = (
                (down >= level) is keeps_deeper or down == level for _, down in (one, other)
            )
            if inside:
                made.append(one)
            if inside != next_inside:
                share = (level - one[1]) / (other[1] - one[1])
                made.append((one[0] + share * (other[0] - one[0]), level))
        points = tuple(made)
    return points
