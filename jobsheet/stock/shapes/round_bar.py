"""Round bar: two ends and a round side."""

from __future__ import annotations

import math

from jobsheet.model.stock import Outline, Stock, circle
from jobsheet.stock.shape_kind import (
    BAR_LENGTH,
    LIES,
    Box,
    ShapeKind,
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
    radius = stock.diameter.value / 2
    return Outline(
        axis=stock.axis,
        long=stock.sizes[stock.axis],
        outer=circle(radius),
        area=math.pi * radius**2,
        radius=radius,
        is_round=True,
    )


def _words(stock: Stock) -> str:
    return f"round bar ⌀{text_of(stock.diameter)} × {text_of(stock.bar_length)}"


def _usual(stock: Stock) -> dict[str, object]:
    return {**longest(stock), "diameter": thinnest(stock)}


SHAPE = ShapeKind(
    name="round bar", entries=(size("diameter", "Diameter"), BAR_LENGTH, LIES), box=_box, outline=_outline, words=_words,
    usual=_usual,
)  # fmt: skip
