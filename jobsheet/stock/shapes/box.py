"""A block, a flat or a plate with square edges: its three sizes."""

from __future__ import annotations

from jobsheet.model.stock import Outline, Stock
from jobsheet.stock.shape_kind import HEIGHT, LENGTH, WIDTH, Box, ShapeKind


def _box(stock: Stock) -> Box:
    return stock.length, stock.width, stock.height


def _outline(stock: Stock) -> Outline:
    x, y, z = stock.sizes
    return Outline(axis=2, long=z, outer=((0.0, 0.0), (x, 0.0), (x, y), (0.0, y)), area=x * y)


def _words(stock: Stock) -> str:
    return " × ".join(one.text for one in _box(stock))


SHAPE = ShapeKind(name="box", entries=(LENGTH, WIDTH, HEIGHT), box=_box, outline=_outline, words=_words)
