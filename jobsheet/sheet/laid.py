"""A block becomes a drawing of a known height: laid out by measuring, painted later.

The module of each block registers how it is laid; `lay` looks it up. Blocks are values, so what was
laid once for a width is remembered.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any, TypeVar

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.drawing.drawn import Item, Line, Text
from jobsheet.remembered import remembered
from jobsheet.sheet.styles import BETWEEN, STYLES


class Moved(Struct, frozen=True):
    """Items somewhere else, so far to the right and down [points]; they are moved when the page
    is drawn, not at every try of one.
    """

    items: tuple[Any, ...]
    dx: float
    dy: float


class Laid(Struct, frozen=True):
    """Items from the upper left corner of the block, some of them moved, and how high it is [points]."""

    items: tuple[Item | Moved, ...]
    height: float


def settled(items: tuple[Item | Moved, ...], dx: float = 0.0, dy: float = 0.0) -> Iterator[Item]:
    """The items where they stand on the page, each moved once however deep it lies."""
    for item in items:
        if isinstance(item, Moved):
            yield from settled(item.items, dx + item.dx, dy + item.dy)
        elif isinstance(item, Line):
            points = tuple((x + dx, y + dy) for x, y in item.points)
            yield Line(points, item.weight, item.dash, item.closed, item.fill, item.ink)
        elif isinstance(item, Text):
            yield Text(item.x + dx, item.y + dy, item.words, item.style, item.anchor, item.size, item.ink)
        else:
            yield replace(item, x=item.x + dx, y=item.y + dy)


Layer = Callable[[Any, float], Laid]
_LAYERS: dict[type, Layer] = {}
F = TypeVar("F", bound=Layer)


def lays(block: type) -> Callable[[F], F]:
    """Register how a block is laid."""

    def register(layer: F) -> F:
        _LAYERS[block] = layer
        return layer

    return register


# A dozen pages full: what is printed again is mostly what was printed last. Each holds
# all its lines, thousands of values.
@remembered(96)
def lay(block: Any, width: float) -> Laid:
    """A block in that width."""
    return _LAYERS[type(block)](block, width)


def stacked(blocks: tuple[Any, ...], width: float, between: float = BETWEEN) -> Laid:
    """Blocks one under the other."""
    items: list[Item | Moved] = []
    y = 0.0
    for index, block in enumerate(blocks):
        laid = lay(block, width)
        y += between if index else 0.0
        items.append(Moved(laid.items, 0.0, y))
        y += laid.height
    return Laid(tuple(items), y)


def text_lines(
    lines: tuple[str, ...],
    style: str,
    x: float,
    y: float,
    *,
    anchor: str = "start",
    size: float | None = None,
) -> tuple[list[Item], float]:
    """Lines of text whose upper edge is at y; the items and the lower edge."""
    asked = STYLES[style]
    size = size or asked.size
    leading = size * 1.22
    items: list[Item] = []
    for index, line in enumerate(lines):
        if line:
            items.append(
                Text(
                    x,
                    y + index * leading + size * 0.96,
                    line,
                    style,
                    anchor,
                    None if size == asked.size else size,
                )
            )
    return items, y + len(lines) * leading


def across(width: float, y: float, weight: str = "row", left: float = 0.0) -> Line:
    """A level line."""
    return Line(((left, y), (width, y)), weight)
