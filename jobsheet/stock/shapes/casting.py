"""A casting, as a block: its skin, and the draft by which its sides lean in from the bottom up."""

from __future__ import annotations

import math

from jobsheet.model.stock import Outline, Stock
from jobsheet.operations.entry import Entry
from jobsheet.stock.shape_kind import HEIGHT, LENGTH, WIDTH, Box, ShapeKind, text_of


def _box(stock: Stock) -> Box:
    return stock.length, stock.width, stock.height


def lean(stock: Stock) -> float:
    """What each side leans in from the bottom to the top [m]."""
    return stock.height.value * math.tan(stock.draft.value) if stock.draft is not None else 0.0


def _outline(stock: Stock) -> Outline:
    (x, y, z), inward = stock.sizes, lean(stock)
    # A frustum of the same lean on all sides: the area that, times its height, is its volume.
    area = x * y - (x + y) * inward + 4 / 3 * inward**2
    return Outline(axis=2, long=z, outer=((0.0, 0.0), (x, 0.0), (x, y), (0.0, y)), area=area, lean=inward)


def _words(stock: Stock) -> str:
    draft = f", draft {text_of(stock.draft)}" if stock.draft is not None else ""
    return f"casting {' × '.join(one.text for one in _box(stock))}{draft}"


def _wrong(stock: Stock) -> tuple[str, str]:
    thin = min(stock.sizes)
    if stock.skin is not None and 2 * stock.skin.value >= thin:
        return "skin", (
            f"A skin of {stock.skin.text} on both sides is all that the thinnest size has; write how thick the hard skin is, such as 1 mm"
        )
    if 2 * lean(stock) >= min(stock.sizes[:2]):
        return "draft", (
            f"With a draft of {text_of(stock.draft)} nothing is left at the top of this height; write a smaller angle, such as 2°"
        )
    return "", ""


SHAPE = ShapeKind(
    name="casting",
    entries=(
        LENGTH,
        WIDTH,
        HEIGHT,
        Entry(
            name="skin", title="Skin", asks="length", low="0.05 mm", high="20 mm", optional=True,
            hint="how thick; empty: the workshop's number",
        ),
        Entry(
            name="draft", title="Draft", asks="angle", low="0°", high="30°", optional=True,
            hint="sides lean in from the bottom up",
        ),
    ),
    box=_box, outline=_outline, words=_words, wrong=_wrong,
)  # fmt: skip
