"""Round tube: its outside, its wall."""

from __future__ import annotations

import math

from jobsheet.model.stock import Outline, Stock, circle
from jobsheet.stock.shape_kind import (
    BAR_LENGTH,
    LIES,
    Box,
    ShapeKind,
    as_typed,
    laid_along,
    longest,
    size,
    text_of,
    thinnest,
)


def _box(stock: Stock) -> Box:
    assert stock.diameter is not None
    return laid_along(stock, stock.diameter, stock.diameter)


def _outline(stock: Stock) -> Outline:
    assert stock.diameter is not None
    assert stock.wall is not None
    radius, wall = stock.diameter.value / 2, stock.wall.value
    inner = tuple((u + wall, v + wall) for u, v in circle(radius - wall))
    return Outline(
        axis=stock.axis, long=stock.sizes[stock.axis], outer=circle(radius), inner=inner,
        area=math.pi * (radius**2 - (radius - wall) ** 2), radius=radius, is_round=True,
    )  # fmt: skip


def _words(stock: Stock) -> str:
    return f"tube ⌀{text_of(stock.diameter)}, wall {text_of(stock.wall)}, × {text_of(stock.bar_length)}"


def _usual(stock: Stock) -> dict[str, object]:
    outside = thinnest(stock)
    # A fifth of the radius, until somebody says it.
    return {**longest(stock), "diameter": outside, "wall": as_typed(outside.value / 10, outside)}


def _wrong(stock: Stock) -> tuple[str, str]:
    assert stock.diameter is not None
    assert stock.wall is not None
    if stock.wall.value < stock.diameter.value / 2 * (1 - 1e-9):
        return "", ""
    return "wall", (
        f"A wall of {stock.wall.text} leaves no bore in a tube of ⌀{stock.diameter.text}: it must be under half of the outside;"
        " write a thinner wall, or choose round bar"
    )


SHAPE = ShapeKind(
    name="tube",
    entries=(
        size("diameter", "Outside diameter"),
        size("wall", "Wall", low="0.1 mm", high="200 mm"),
        BAR_LENGTH,
        LIES,
    ),
    box=_box, outline=_outline, words=_words, usual=_usual, wrong=_wrong,
)  # fmt: skip
