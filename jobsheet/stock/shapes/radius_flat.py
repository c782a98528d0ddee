"""Flat or square bar whose long edges have a radius, as rolled and extruded bar has."""

from __future__ import annotations

import math

from jobsheet.model.stock import Outline, Stock
from jobsheet.stock.shape_kind import (
    HEIGHT,
    LENGTH,
    WIDTH,
    Box,
    ShapeKind,
    as_typed,
    reckoned_size,
    size,
    text_of,
)

#: Lines to a quarter of a round edge.
QUARTER = 12


def _box(stock: Stock) -> Box:
    return stock.length, stock.width, stock.height


def _across(stock: Stock) -> tuple[float, float]:
    """The two sizes across the bar [m]."""
    one, other = (of for axis, of in enumerate(stock.sizes) if axis != stock.axis)
    return one, other


def _outline(stock: Stock) -> Outline:
    assert stock.corner_radius is not None
    (wide, high), radius = _across(stock), stock.corner_radius.value
    points = []
    for corner, (u, v) in enumerate(
        ((wide - radius, high - radius), (radius, high - radius), (radius, radius), (wide - radius, radius))
    ):
        for at in range(QUARTER + 1):
            turn = math.pi / 2 * (corner + at / QUARTER)
            points.append((u + radius * math.cos(turn), v + radius * math.sin(turn)))
    return Outline(
        axis=stock.axis,
        long=stock.sizes[stock.axis],
        outer=tuple(points),
        area=wide * high - (4 - math.pi) * radius**2,
    )


def _words(stock: Stock) -> str:
    return f"{' × '.join(one.text for one in _box(stock))}, edges R{text_of(stock.corner_radius)}"


def _usual(stock: Stock) -> dict[str, object]:
    smaller = min((stock.length, stock.width, stock.height), key=lambda quantity: quantity.value)
    return {"corner_radius": as_typed(min(smaller.value / 10, 2e-3), smaller)}


def _wrong(stock: Stock) -> tuple[str, str]:
    assert stock.corner_radius is not None
    most = min(_across(stock)) / 2
    if stock.corner_radius.value <= most * (1 + 1e-9):
        return "", ""
    return "corner_radius", (
        f"A radius of {stock.corner_radius.text} on both edges does not fit a bar that is {reckoned_size(2 * most, stock.corner_radius).text}"
        " across: it can be half of that at most; write a smaller radius, or choose round bar"
    )


SHAPE = ShapeKind(
    name="radius flat",
    entries=(
        LENGTH,
        WIDTH,
        HEIGHT,
        size("corner_radius", "Radius of its long edges", low="0.05 mm", high="200 mm"),
    ),
    box=_box, outline=_outline, words=_words, usual=_usual, wrong=_wrong,
)  # fmt: skip
