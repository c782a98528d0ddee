"""The shapes of stock by name; a shape is imported when a job first has it. The list is the folder's own."""

from __future__ import annotations

import importlib
from functools import cache
from pathlib import Path
from typing import Any

from msgspec.structs import replace

from jobsheet.errors import QuantityError
from jobsheet.model.quantity import Quantity
from jobsheet.model.stock import ALONG, BOX, Outline, Stock
from jobsheet.operations.entry import Entry
from jobsheet.remembered import remembered
from jobsheet.stock.shape_kind import ShapeKind

_SHAPES = Path(__file__).parent / "shapes"

CONDITION = Entry(
    name="condition", title="Also said of it", asks="text", optional=True, hint="in your words, such as flat, from the rack"
)  # fmt: skip
AS_BOUGHT = Entry(
    name="as_bought", title="Faces left unmachined", asks="faces", optional=True, hint="such as top, bottom"
)
SURFACES = Entry(
    name="surfaces", title="Surfaces", asks="surfaces", optional=True, hint="such as black, ends sawn"
)
RELIEVED = Entry(
    name="relieved", title="Stress relieved", asks="flag", optional=True, hint="then it does not bow as one side comes off"
)  # fmt: skip
#: What fields are that nobody filled in, where that is not None.
_UNSAID = {"condition": "", "along": ALONG[0]}
#: Sizes that only some shapes ask.
_OF_SHAPES = (
    "along", "bar_length", "diameter", "wall", "across_flats", "corner_radius", "skin", "draft", "outline",
)  # fmt: skip
#: What every shape asks behind its sizes, as the form has it; the file has the words first, as it always had.
ALWAYS = (SURFACES, AS_BOUGHT, RELIEVED, CONDITION)


@cache
def shapes() -> tuple[str, ...]:
    """The names of all shapes, without importing any; the box first."""
    found = sorted(path.stem.replace("_", " ") for path in _SHAPES.glob("[!_]*.py"))
    return (BOX, *(name for name in found if name != BOX))


@cache
def shape_called(name: str) -> ShapeKind:
    """The shape of that name; KeyError where there is none."""
    if name not in shapes():
        raise KeyError(name)
    shape_kind: ShapeKind = importlib.import_module(f"jobsheet.stock.shapes.{name.replace(' ', '_')}").SHAPE
    return shape_kind


@cache
def shape_entry() -> Entry:
    """The field that chooses the shape."""
    return Entry(
        name="shape",
        title="Shape",
        asks="choice",
        choices=shapes(),
        optional=True,
        hint="box, round bar, ...",
    )


@cache
def entries_called(name: str) -> tuple[Entry, ...]:
    """The fields of stock of that shape, in the order of form and file."""
    return (shape_entry(), *shape_called(name).entries, *ALWAYS)


def in_file(name: str) -> tuple[Entry, ...]:
    """The fields of stock of that shape in the order of the file."""
    return (shape_entry(), *shape_called(name).entries, CONDITION, AS_BOUGHT, SURFACES, RELIEVED)


def entries_of(stock: Stock) -> tuple[Entry, ...]:
    """The fields of this stock."""
    return entries_called(stock.shape)


@cache
def every_entry() -> tuple[Entry, ...]:
    """The fields of all shapes, each once."""
    found: dict[str, Entry] = {}
    for name in shapes():
        found |= {entry.name: entry for entry in entries_called(name) if entry.name not in found}
    return tuple(found.values())


def sized(stock: Stock) -> Stock:
    """The stock with the box that its own sizes make.

    Raises
    ------
    QuantityError
        Where its sizes make no piece of metal, with what to write instead.
    """
    shape = shape_called(stock.shape)
    _, sentence = shape.wrong(stock)
    if sentence:
        raise QuantityError(f"{sentence}.")
    length, width, height = shape.box(stock)
    if (stock.length, stock.width, stock.height) == (length, width, height):
        return stock
    return replace(stock, length=length, width=width, height=height)


def changed_to(stock: Stock, name: str) -> Stock:
    """The stock as another shape: sizes that both ask stay, what the shape must know
    besides is taken from the box before.
    """
    shape = shape_called(name or BOX)
    values: dict[str, Any] = {"shape": shape.name}
    usual = shape.usual(stock)
    laid = stock.bar_length is not None
    values |= {
        key: value
        for key, value in usual.items()
        if getattr(stock, key) is None or (key == "along" and not laid)
    }
    made = replace(stock, **values)
    if shape.wrong(made)[1]:
        made = replace(made, **usual)
    return sized(replace(made, **_not_asked(shape)))


def _not_asked(shape: ShapeKind) -> dict[str, Any]:
    """What a shape has no field for: its file could not keep it."""
    asked = {entry.name for entry in shape.entries}
    return {name: ALONG[0] if name == "along" else None for name in _OF_SHAPES if name not in asked}


def made_of(values: dict[str, Any]) -> Stock:
    """Stock of the values of its own fields, its box following.

    Raises
    ------
    QuantityError
        As `sized`.
    """
    nought = Quantity(0.0, "0")
    return sized(Stock(**{"length": nought, "width": nought, "height": nought, **values}))


def wrong_in(values: dict[str, Any]) -> str:
    """The field whose value makes no sense beside the others; nothing where all do."""
    nought = Quantity(0.0, "0")
    stock = Stock(**{"length": nought, "width": nought, "height": nought, **values})
    return shape_called(stock.shape).wrong(stock)[0]


def changed(stock: Stock, name: str, value: Any) -> Stock:
    """The stock with one field changed, its box following.

    Raises
    ------
    QuantityError
        As `sized`.
    """
    if name == "shape":
        return changed_to(stock, value or BOX)
    if value is None:
        value = _UNSAID.get(name)
    return sized(replace(stock, **{name: value}))


@remembered(16)
def outline_of(stock: Stock) -> Outline:
    """The solid of the stock as an outline that is drawn out."""
    return shape_called(stock.shape).outline(stock)


def shape_of(stock: Stock) -> Outline | None:
    """The same; None of a box, which is all that its sizes say."""
    return None if stock.shape == BOX else outline_of(stock)


def volume_of(stock: Stock) -> float:
    """How much metal it is [m³]."""
    outline = outline_of(stock)
    return outline.area * outline.long


def words_of(stock: Stock) -> str:
    """Shape and sizes in a line, as they were typed."""
    return shape_called(stock.shape).words(stock)
