"""What a shape of stock says of itself, and the sizes that several shapes ask."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from jobsheet.model.quantity import Quantity
from jobsheet.model.stock import ALONG, Outline, Stock
from jobsheet.operations.entry import Entry
from jobsheet.units.grammar import read
from jobsheet.units.show import trimmed

Box = tuple[Quantity, Quantity, Quantity]

LENGTH = Entry(
    name="length", title="Length", asks="length", low="1 mm", high="3 m", hint="left to right on the drawing"
)
WIDTH = Entry(name="width", title="Width", asks="length", low="1 mm", high="3 m", hint="front to rear")
HEIGHT = Entry(name="height", title="Height", asks="length", low="0.1 mm", high="3 m")
BAR_LENGTH = Entry(
    name="bar_length", title="Length", asks="length", low="1 mm", high="3 m", hint="from end to end"
)
LIES = Entry(
    name="along", title="It lies along the", asks="choice", choices=ALONG, optional=True,
    hint="of the drawing; height: it stands",
)  # fmt: skip


def size(name: str, title: str, hint: str = "", *, low: str = "0.1 mm", high: str = "1 m") -> Entry:
    """A size that a shape asks beside those of its box."""
    return Entry(name=name, title=title, asks="length", low=low, high=high, hint=hint)


class ShapeKind(Struct, frozen=True, kw_only=True):
    """One shape: its fields in the order of form and file, the box round it, what cannot be, and its solid.

    `wrong` says in one sentence which size makes no sense beside the others, with the name of its field.
    `usual` gives what a box of stock has where another shape is chosen for it.
    """

    name: str
    entries: tuple[Entry, ...]
    box: Callable[[Stock], Box]
    outline: Callable[[Stock], Outline]
    words: Callable[[Stock], str]
    usual: Callable[[Stock], dict[str, object]] = lambda _stock: {}
    wrong: Callable[[Stock], tuple[str, str]] = lambda _stock: ("", "")


def laid_along(stock: Stock, first: Quantity, second: Quantity) -> Box:
    """The box of a bar: its length along the size it lies along, and its two
    sizes across in the drawing's order.
    """
    assert stock.bar_length is not None
    quantities = [first, second]
    quantities.insert(ALONG.index(stock.along), stock.bar_length)
    return quantities[0], quantities[1], quantities[2]


def longest(stock: Stock) -> dict[str, object]:
    """How a box of stock is meant as a bar: along its longest size."""
    at = stock.sizes.index(max(stock.sizes))
    return {"along": ALONG[at], "bar_length": (stock.length, stock.width, stock.height)[at]}


def thinnest(stock: Stock) -> Quantity:
    """The smallest size of the box of stock."""
    return min((stock.length, stock.width, stock.height), key=lambda quantity: quantity.value)


def reckoned_size(value: float, like: Quantity) -> Quantity:
    """A size that follows from another [m], spelled in the unit of that one."""
    if "in" in like.text or '"' in like.text:
        return Quantity(value, f"{trimmed(value / 0.0254, 4)} in")
    return Quantity(value, f"{trimmed(value * 1e3, 3)} mm")


def as_typed(value: float, like: Quantity) -> Quantity:
    """The same as it would be typed and read again: rounded, a place to begin from."""
    text = reckoned_size(value, like).text
    return Quantity(read(text, "length"), text)


def text_of(quantity: Quantity | None) -> str:
    """A size as it was typed; nothing where it is not said."""
    return quantity.text if quantity is not None else ""
