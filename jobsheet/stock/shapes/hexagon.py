"""Hexagon bar: it lies on a flat; standing, two of its flats are front and rear."""

from __future__ import annotations

import math

from jobsheet.model.stock import Outline, Stock
from jobsheet.stock.shape_kind import (
    BAR_LENGTH,
    LIES,
    Box,
    ShapeKind,
    laid_along,
    longest,
    reckoned_size,
    size,
    text_of,
    thinnest,
)


def _box(stock: Stock) -> Box:
    assert stock.across_flats is not None
    corners = reckoned_size(stock.across_flats.value * 2 / math.sqrt(3), stock.across_flats)
    return laid_along(stock, corners, stock.across_flats)


def _outline(stock: Stock) -> Outline:
    assert stock.across_flats is not None
    flats = stock.across_flats.value
    side = flats / math.sqrt(3)
    points = ((side / 2, 0), (side * 1.5, 0), (2 * side, flats / 2), (side * 1.5, flats), (side / 2, flats))
    return Outline(
        axis=stock.axis, long=stock.sizes[stock.axis], outer=(*points, (0.0, flats / 2)),
        area=math.sqrt(3) / 2 * flats**2, radius=flats / 2,
    )  # fmt: skip


def _words(stock: Stock) -> str:
    return f"hexagon {text_of(stock.across_flats)} across flats × {text_of(stock.bar_length)}"


def _usual(stock: Stock) -> dict[str, object]:
    return {**longest(stock), "across_flats": thinnest(stock)}


SHAPE = ShapeKind(
    name="hexagon", entries=(size("across_flats", "Across flats"), BAR_LENGTH, LIES), box=_box, outline=_outline, words=_words,
    usual=_usual,
)  # fmt: skip
