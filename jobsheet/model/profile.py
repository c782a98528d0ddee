"""The stock as a set-up sees it from its end: how wide and how much a layer off its top is, where it is no box."""

from __future__ import annotations

from itertools import pairwise

from msgspec import Struct

Points = tuple[tuple[float, float], ...]


class Profile(Struct, frozen=True, kw_only=True):
    """An outline seen along the axis it is drawn out along, or from above. Lengths [m].

    `outer` and `inner` have places across and down from the face that is up; they are empty where one looks at it from above, as on
    the end of a bar that stands: then every layer has the same `area`. `cross` says along which of the two sides of the work, 0 for x
    and 1 for y, the places across lie. `gone` is what has come off the top.
    """

    area: float
    long: float = 0.0
    outer: Points = ()
    inner: Points = ()
    cross: int = 1
    gone: float = 0.0

    def layer(self, depth: float) -> float:
        """How much metal the next layer of that depth is [m³]."""
        if not self.outer:
            return self.area * depth
        low, high = self.gone, self.gone + depth
        return (_between(self.outer, low, high) - _between(self.inner, low, high)) * self.long

    def width(self, depth: float) -> float | None:
        """How wide that layer is at its widest [m]; None where it is as wide as the work."""
        if not self.outer:
            return None
        found = [across for across, _ in _clipped(self.outer, self.gone, self.gone + depth)]
        return max(found) - min(found) if found else 0.0


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
