"""Which cuts of a set-up stand so near to one another that a small picture shows neither: the metal that stays
between them, and the crowds that they make.
"""

from __future__ import annotations

import math
from itertools import combinations

from msgspec import Struct

from jobsheet.model.lying import Lying
from jobsheet.model.shape import Edge, Groove, Hole, Recess
from jobsheet.stages.course import Cut, Sized, is_through, moved

Spot = tuple[float, float]
#: Thinner metal is none, but what rounding leaves [m].
LEAST = 5e-5


class Outlined(Struct, frozen=True, kw_only=True):
    """A cut from above: every place so near (`radius`) to its `spine`, a place, a line or the corners of a
    box; from the left and near side of the work as its set-up begins [m].
    """

    step: int
    spine: tuple[Spot, ...]
    radius: float
    is_hole: bool = False

    @property
    def low(self) -> Spot:
        """Its left near corner [m]."""
        return min(x for x, _ in self.spine) - self.radius, min(y for _, y in self.spine) - self.radius

    @property
    def high(self) -> Spot:
        """Its right far corner [m]."""
        return max(x for x, _ in self.spine) + self.radius, max(y for _, y in self.spine) + self.radius

    @property
    def lines(self) -> tuple[tuple[Spot, Spot], ...]:
        """The lines of its spine; one of no length where it is a place."""
        if len(self.spine) < 3:
            return ((self.spine[0], self.spine[-1]),)
        return tuple(zip(self.spine, (*self.spine[1:], self.spine[0]), strict=True))


class Wall(Struct, frozen=True, kw_only=True):
    """Metal between two cuts, or two holes that stand near: how much [m], and where it is thinnest."""

    between: tuple[Outlined, Outlined]
    thick: float
    start: Spot
    end: Spot

    @property
    def middle(self) -> Spot:
        """Half way through it [m]."""
        return (self.start[0] + self.end[0]) / 2, (self.start[1] + self.end[1]) / 2


def outlined(lie: Lying, cuts: tuple[Cut, ...]) -> tuple[Outlined, ...]:
    """The cuts of a set-up that have walls, where they are on the work as it begins."""
    return tuple(
        made
        for cut in cuts
        for sized in cut.shapes
        if (made := _outlined(sized, cut, moved(lie, cut.before))) is not None
    )


def _outlined(sized: Sized, cut: Cut, by: Spot) -> Outlined | None:
    shape = sized.shape
    spots = tuple((x + by[0], y + by[1]) for x, y in sized.corners)
    if isinstance(shape, Hole):
        return Outlined(step=cut.number, spine=spots, radius=shape.diameter / 2, is_hole=True)
    if isinstance(shape, Groove):
        return Outlined(step=cut.number, spine=spots, radius=shape.width / 2)
    if isinstance(shape, Recess):
        (x, y), half = spots[0], (shape.length / 2 - shape.radius, shape.width / 2 - shape.radius)
        return Outlined(step=cut.number, spine=_box(x, y, *half), radius=shape.radius)
    if isinstance(shape, Edge) and not is_through(sized, cut.before.size[2]):
        return Outlined(step=cut.number, spine=_strip(shape, cut.before, by), radius=0.0)
    return None


def _box(x: float, y: float, along: float, across: float) -> tuple[Spot, ...]:
    return (x - along, y - across), (x + along, y - across), (x + along, y + across), (x - along, y + across)


def _strip(edge: Edge, lie: Lying, by: Spot) -> tuple[Spot, ...]:
    """What is cut off one side, from that side inward."""
    along, across, _ = lie.size
    x, y, wide, deep = by[0] + along / 2, by[1] + across / 2, along / 2, across / 2
    if edge.side in ("left", "right"):
        x, wide = (
            (by[0] + (edge.width / 2 if edge.side == "left" else along - edge.width / 2)),
            edge.width / 2,
        )
    else:
        y, deep = (
            (by[1] + (edge.width / 2 if edge.side == "front" else across - edge.width / 2)),
            edge.width / 2,
        )
    return _box(x, y, wide, deep)


def wall(one: Outlined, other: Outlined) -> Wall:
    """The metal between two cuts; 0 or less where they meet."""
    if _meet(one, other) or _meet(other, one):
        return Wall(between=(one, other), thick=-1.0, start=one.spine[0], end=other.spine[0])
    start, end = min(
        (_nearest(a, b) for a in one.lines for b in other.lines), key=lambda ends: math.dist(*ends)
    )
    far = math.dist(start, end)
    if not far:
        return Wall(between=(one, other), thick=-1.0, start=start, end=end)
    way = (end[0] - start[0]) / far, (end[1] - start[1]) / far
    return Wall(
        between=(one, other),
        thick=far - one.radius - other.radius,
        start=(start[0] + way[0] * one.radius, start[1] + way[1] * one.radius),
        end=(end[0] - way[0] * other.radius, end[1] - way[1] * other.radius),
    )


def _meet(one: Outlined, other: Outlined) -> bool:
    """Whether the box of one has the middle of the other in it: no wall stands between them then."""
    x, y = ((low + high) / 2 for low, high in zip(other.low, other.high, strict=True))
    return len(one.spine) > 2 and one.low[0] <= x <= one.high[0] and one.low[1] <= y <= one.high[1]


def _nearest(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> tuple[Spot, Spot]:
    """Where two lines are nearest; in the middle of where they run side by side."""
    if _cross(one, other) and _cross(other, one):
        return one[0], one[0]
    ends = [(end, _on(other, end)) for end in one] + [(_on(one, end), end) for end in other]
    least = min(math.dist(*pair) for pair in ends)
    nearest = [pair for pair in ends if math.dist(*pair) < least + LEAST / 10]
    middles = [
        tuple(sum(pair[at][axis] for pair in nearest) / len(nearest) for axis in (0, 1)) for at in (0, 1)
    ]
    return (middles[0][0], middles[0][1]), (middles[1][0], middles[1][1])


def _cross(line: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> bool:
    """Whether the ends of the other lie on both sides of a line."""
    (x, y), (x2, y2) = line
    left, right = ((x2 - x) * (end[1] - y) - (y2 - y) * (end[0] - x) for end in other)
    return left * right < 0


def _on(line: tuple[Spot, Spot], spot: Spot) -> Spot:
    """The place of a line that is nearest to a spot."""
    (x, y), (x2, y2) = line
    along = (x2 - x) ** 2 + (y2 - y) ** 2
    share = ((spot[0] - x) * (x2 - x) + (spot[1] - y) * (y2 - y)) / along if along else 0.0
    share = min(max(share, 0.0), 1.0)
    return x + share * (x2 - x), y + share * (y2 - y)


def near_walls(cuts: tuple[Outlined, ...], most: float) -> tuple[Wall, ...]:
    """The thinnest wall between every two cuts that do not meet, where it is thinner than `most` [m].

    What several steps cut at one place is one: a slot that is widened has its last walls. A hole has only its
    thinnest wall, and two holes have none: their centres are wound to, and those stand further apart.
    """
    walls: list[Wall] = []
    for one, other in combinations(_grown_together(cuts), 2):
        between = [wall(a, b) for a in one for b in other if not (a.is_hole and b.is_hole)]
        thin = min(between, key=lambda each: each.thick, default=None)
        if thin is not None and LEAST < thin.thick < most:
            walls.append(thin)
    thinnest: dict[Outlined, float] = {}
    for each in walls:
        for cut in each.between:
            thinnest[cut] = min(each.thick, thinnest.get(cut, each.thick))
    return tuple(
        each
        for each in walls
        if not any(cut.is_hole and each.thick > thinnest[cut] + LEAST for cut in each.between)
    )


def _grown_together(cuts: tuple[Outlined, ...]) -> list[list[Outlined]]:
    """Cuts that meet, each with all that it meets."""
    groups: list[list[Outlined]] = []
    for cut in cuts:
        met = [group for group in groups if any(wall(cut, each).thick <= LEAST for each in group)]
        groups = [group for group in groups if group not in met]
        groups.append([each for group in met for each in group] + [cut])
    return groups
