"""The stock as a set-up sees it where it is no box: how much a cut takes off it,
how wide and how long that cut is.
"""

from __future__ import annotations

import math
from itertools import pairwise

from msgspec import Struct

Points = tuple[tuple[float, float], ...]
Span = tuple[float, float]

#: From one end of anything to the other.
_ALL: Span = (-math.inf, math.inf)
#: Slices of a shape whose sides lean: what they miss is under a thousandth of a cut.
_SLICES = 48
#: A saw's plane is looked at so far to both sides of it [m].
_HAIR = 1e-6


class Profile(Struct, frozen=True, kw_only=True):
    """A section of the stock: across and down from the face that is up as one looks along the axis it is
    drawn out along, or, with `above`, along x and away as one looks down on it. Places count from the
    left, or the near side. Lengths [m].

    `outer` has its corners, or `radius` and `bore` say a round bar or tube. `cross` says along which side of
    the work, 0 for x and 1 for y, the places across lie. `gone` is what has come off the top. A casting with
    draft has `block` instead, its sizes along x, away and down, and leans in by `lean` on all sides from its
    bottom to its top, along the size `rises`; `turned`: its top is left, near or down.
    """

    area: float
    long: float = 0.0
    outer: Points = ()
    radius: float = 0.0
    bore: float = 0.0
    cross: int = 1
    above: bool = False
    gone: float = 0.0
    block: tuple[float, float, float] | None = None
    lean: float = 0.0
    rises: int = 2
    turned: bool = False

    def layer(self, depth: float) -> float:
        """How much metal the next layer of that depth is [m³]."""
        down = self.gone, self.gone + depth
        if self.block is not None:
            return self._of_block(_ALL, _ALL, down)
        return self.area * depth if self.above else self._section(_ALL, down) * self.long

    def width(self, depth: float) -> float | None:
        """How wide that layer is at its widest [m]; None where it is as wide as the work."""
        if self.above or self.block is not None:
            return None
        if self.radius:
            # The layer is widest at its lower edge, or at the middle of the bar once it goes beyond.
            return _chord(self.radius, max(self.gone, min(self.gone + depth, self.radius)))
        return _reach(clipped(self.outer, 1, (self.gone, self.gone + depth)), 0)

    def strip(self, side: str, width: float, depth: float) -> float:
        """How much metal a cut off a side is, so far inward and so deep from the top [m³]."""
        down = self.gone, self.gone + depth
        x, y = self._inward(side, width)
        if self.block is not None:
            return self._of_block(x, y, down)
        if self.above:
            return self._section(x, y) * depth
        if _across(side) == self.cross:
            return self._section((x, y)[self.cross], down) * self.long
        return self._section(_ALL, down) * min(width, self.long)

    def run(self, side: str, width: float, depth: float) -> float | None:
        """How long that cut is along its side [m]; None where it is as long as the work."""
        if self.block is not None:
            return None
        if not self.above:
            return None if _across(side) == self.cross else self.width(depth)
        if self.radius:
            return _chord(self.radius, min(width, self.radius))
        at = _across(side)
        return _reach(clipped(self.outer, at, self._inward(side, width)[at]), 1 - at)

    def groove(self, along: int, way: float, width: float, depth: float, *, round_ends: bool) -> float | None:
        """How much metal a groove over the middle is [m³], cut by a cutter of that width whose centre
        goes so far along x (0) or away (1).

        With `round_ends` the cutter stops inside the work at both ends, else what it runs out into is no
        metal. None where the face that is up is flat all over: there it is a box's.
        """
        if self.above or self.block is not None:
            return None
        middle, lengthwise = self._size(self.cross) / 2, along != self.cross
        half = (width if lengthwise else way) / 2
        down = self.gone, self.gone + depth
        run = way if lengthwise else width
        area = self._section((middle - half, middle + half), down) * (
            min(run, self.long) if lengthwise else run
        )
        if not round_ends:
            return area
        # The two half circles, slice by slice across: together one whole circle
        # lengthwise, one beyond each end across.
        radius, thin = width / 2, width / _SLICES
        for one in range(_SLICES):
            off = (one + 0.5) * thin - radius
            chord, at = (
                2 * math.sqrt(radius**2 - off**2),
                off if lengthwise else off + math.copysign(half, off),
            )
            area += self._section((middle + at - thin / 2, middle + at + thin / 2), down) * chord
        return area

    def sawn(self, side: str, width: float, depth: float) -> float:
        """The area that a saw goes through, so far inward from a side and so deep [m²]."""
        near, far = (self.strip(side, width + by, depth) for by in (-_HAIR, _HAIR))
        return (far - near) / (2 * _HAIR)

    def rim(self, whole: tuple[float, float]) -> float | None:
        """How long the edge round the face that is up is [m], of work that is so large along x
        and away; None where it is a box's.
        """
        if self.block is not None:
            return None
        if self.above:
            if self.radius:
                return 2 * math.pi * self.radius
            return sum(math.dist(one, other) for one, other in pairwise((*self.outer, self.outer[0])))
        wide = _chord(self.radius, self.gone) if self.radius else self.width(0.0)
        return 2 * (whole[1 - self.cross] + wide) if wide else 0.0

    def _inward(self, side: str, width: float) -> tuple[Span, Span]:
        """The places along x and away that a cut off a side covers."""
        at = _across(side)
        span = (-math.inf, width) if side in ("left", "front") else (self._size(at) - width, math.inf)
        return (span, _ALL) if at == 0 else (_ALL, span)

    def _size(self, at: int) -> float:
        if self.block is not None:
            return self.block[at]
        if self.radius:
            return 2 * self.radius
        return max(one[at if self.above else 0] for one in self.outer)

    def _section(self, across: Span, down: Span) -> float:
        """The area of the section between those places [m²]."""
        if not self.radius:
            return _area(clipped(clipped(self.outer, 0, across), 1, down))
        return _of_disc(self.radius, self.radius, across, down) - _of_disc(
            self.bore, self.radius, across, down
        )

    def _of_block(self, *within: Span) -> float:
        """What lies between those places of a block that leans in, slice by
        slice from its bottom to its top [m³].
        """
        assert self.block is not None
        size, up = self.block, self.rises
        low, high = max(within[up][0], 0.0), min(within[up][1], size[up])
        thick, whole = max(high - low, 0.0) / _SLICES, 0.0
        for one in range(_SLICES):
            from_low = (low + (one + 0.5) * thick) / size[up]
            inward = self.lean * (1 - from_low if self.turned else from_low)
            piece = thick
            for axis in range(3):
                if axis != up:
                    ends = max(within[axis][0], inward), min(within[axis][1], size[axis] - inward)
                    piece *= max(ends[1] - ends[0], 0.0)
            whole += piece
        return whole


def _across(side: str) -> int:
    """The size of the work that a cut off that side goes into."""
    return 0 if side in ("left", "right") else 1


def _chord(radius: float, depth: float) -> float:
    """How wide a circle is so deep below its top [m]: 2 √(r² - (r - h)²)."""
    off = radius - min(max(depth, 0.0), 2 * radius)
    return 2 * math.sqrt(max(radius**2 - off**2, 0.0))


def _of_disc(radius: float, middle: float, across: Span, down: Span) -> float:
    """The area of a disc between places on both of its axes [m²], its middle so far from both."""
    if radius <= 0:
        return 0.0
    (left, right), (top, low) = (
        tuple(min(max(end - middle, -radius), radius) for end in span) for span in (across, down)
    )
    return sum(
        sign * _of_quarter(radius, x, y)
        for sign, x, y in ((1, right, low), (-1, left, low), (-1, right, top), (1, left, top))
    )


def _of_quarter(radius: float, x: float, y: float) -> float:
    """The area of a disc left of x and below y, both from its middle and not beyond it [m²].

    The integral of what lies below y at each place: the whole chord, a part of it, or nothing; that of √(r² -
    x²) is (x √(r² - x²) + r² asin(x / r)) / 2.
    """

    def half(at: float) -> float:
        return (at * math.sqrt(max(radius**2 - at**2, 0.0)) + radius**2 * math.asin(at / radius)) / 2

    reach = math.sqrt(max(radius**2 - y**2, 0.0))
    inner = min(max(x, -reach), reach)
    found = half(inner) - half(-reach) + y * (inner + reach)
    if y > 0:
        found += 2 * (half(min(x, -reach)) - half(-radius)) + 2 * (half(max(x, reach)) - half(reach))
    return found


def _area(points: Points) -> float:
    ring = (*points, points[0]) if points else ()
    return abs(sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise(ring))) / 2


def _reach(points: Points, at: int) -> float:
    """How far points go from one end to the other along an axis [m]."""
    found = [point[at] for point in points]
    return max(found) - min(found) if found else 0.0


def clipped(points: Points, axis: int, span: Span) -> Points:
    """The part of an outline between two places on an axis: cut by one line, then by the
    other (Sutherland and Hodgman, 1974).
    """
    for level, keeps_more in ((span[0], True), (span[1], False)):
        if math.isinf(level):
            continue
        made: list[tuple[float, float]] = []
        for one, other in pairwise((*points, points[0]) if points else ()):
            inside, next_inside = (
                (end[axis] >= level) is keeps_more or end[axis] == level for end in (one, other)
            )
            if inside:
                made.append(one)
            if inside != next_inside:
                share = (level - one[axis]) / (other[axis] - one[axis])
                met = one[1 - axis] + share * (other[1 - axis] - one[1 - axis])
                made.append((level, met) if axis == 0 else (met, level))
        points = tuple(made)
    return points
