"""Boxes, arrows and hatching made of lines, and drawings moved."""

from __future__ import annotations

import math

from msgspec.structs import replace

from jobsheet.drawing.drawn import Item, Line, Point


def moved(items: tuple[Item, ...], dx: float, dy: float) -> tuple[Item, ...]:
    """The same items somewhere else."""
    out: list[Item] = []
    for item in items:
        if isinstance(item, Line):
            out.append(replace(item, points=tuple((x + dx, y + dy) for x, y in item.points)))
        else:
            out.append(replace(item, x=item.x + dx, y=item.y + dy))
    return tuple(out)


def box(x: float, y: float, width: float, height: float) -> tuple[Point, ...]:
    """The corners of a rectangle."""
    return (x, y), (x + width, y), (x + width, y + height), (x, y + height)


def arrow(
    start: Point, end: Point, *, weight: str | float = "dim", head: float = 5.0, both: bool = False
) -> tuple[Item, ...]:
    """A line with a filled head at its end, or at both ends."""
    angle = math.atan2(end[1] - start[1], end[0] - start[0])
    length = math.hypot(end[0] - start[0], end[1] - start[1])
    head = min(head, length / 2 if both else length)
    back = 0.8 * head
    first = (start[0] + back * math.cos(angle), start[1] + back * math.sin(angle)) if both else start
    last = (end[0] - back * math.cos(angle), end[1] - back * math.sin(angle))
    items: list[Item] = [Line((first, last), weight), _head(end, angle, head)]
    if both:
        items.append(_head(start, angle + math.pi, head))
    return tuple(items)


def _head(tip: Point, angle: float, size: float) -> Line:
    spread = 0.36 * size
    back = (tip[0] - size * math.cos(angle), tip[1] - size * math.sin(angle))
    side = (-math.sin(angle) * spread, math.cos(angle) * spread)
    corners = (tip, (back[0] + side[0], back[1] + side[1]), (back[0] - side[0], back[1] - side[1]))
    return Line(corners, 0.0, closed=True, fill="ink")


def hatched(
    outline: tuple[Point, ...],
    *,
    angle: float = 45.0,
    apart: float = 4.0,
    weight: str | float = "thin",
    ink: str = "ink",
) -> tuple[Line, ...]:
    """Parallel lines over a face, cut off at its outline; `angle` in degrees, rising to the right."""
    lean = math.radians(angle)
    # Along the hatch and across it; y runs down the page.
    along, across = (math.cos(lean), -math.sin(lean)), (math.sin(lean), math.cos(lean))
    heights = [x * across[0] + y * across[1] for x, y in outline]
    ways = [x * along[0] + y * along[1] for x, y in outline]
    corners = list(zip(heights, ways, strict=True))
    edges = list(zip(corners, corners[1:] + corners[:1], strict=True))
    lines: list[Line] = []
    level = math.floor(min(heights) / apart) * apart + apart / 2
    top = max(heights)
    while level < top:
        cuts = sorted(_cuts(edges, level))
        for start, end in zip(cuts[::2], cuts[1::2], strict=False):
            points = tuple(
                (along[0] * at + across[0] * level, along[1] * at + across[1] * level) for at in (start, end)
            )
            lines.append(Line(points, weight, ink=ink))
        level += apart
    return tuple(lines)


def _cuts(edges: list[tuple[Point, Point]], level: float) -> list[float]:
    """Where one hatch line crosses the outline, measured along it; every corner is
    given across the hatch and along it.
    """
    return [
        way + (next_way - way) * (level - high) / (next_high - high)
        for (high, way), (next_high, next_way) in edges
        if (high < level) != (next_high < level)
    ]
