"""The stock of a job's file: its shape first, which says what else is asked;
words of an earlier day become facts.
"""

from __future__ import annotations

from typing import Any, Protocol

from jobsheet.catalog.reading.strict_yaml import Node
from jobsheet.errors import QuantityError
from jobsheet.model.stock import BOX, Stock
from jobsheet.operations.entry import Entry
from jobsheet.stock.all_shapes import AS_BOUGHT, in_file, made_of, shape_entry, shapes, wrong_in


class Reading(Protocol):
    """What reads a group of fields and keeps its problems: the reader of a job's file."""

    def problem(self, node: Node, path: str, sentence: str) -> None:
        """Keep what is wrong with a node."""

    def mapping(self, node: Node | None, path: str) -> dict[str, Node]:
        """The fields of a mapping by their plain names."""
        ...

    def entry(self, node: Node, path: str, entry: Entry) -> Any:
        """One value, or None with a problem kept."""

    def entries(
        self, node: Node | None, path: str, entries: tuple[Entry, ...], also: tuple[str, ...] = ()
    ) -> dict[str, Any]:
        """The values of a group of entries."""
        ...


def stock_from(reader: Reading, node: Node | None) -> Stock | None:
    """The stock, or nothing where the reader keeps why it makes no piece of metal."""
    said = node.fields or {} if node is not None else {}
    fields = {name.strip().replace(" ", "_").replace("-", "_").lower(): other for name, other in said.items()}
    shape = BOX
    if (named := fields.get("shape")) is not None and named.text:
        shape = reader.entry(named, "stock.shape", shape_entry()) or ""
    if shape not in shapes():
        return None
    words, kept = _free_faces(fields.get("as_bought"))
    asked = in_file(shape)
    values = reader.entries(
        node, "stock", tuple(entry for entry in asked if entry is not AS_BOUGHT), ("as_bought",)
    )
    if kept is None and (bought := fields.get("as_bought")) is not None:
        kept = reader.entry(bought, "stock.as bought", AS_BOUGHT)
    if kept is not None:
        values["as_bought"] = kept
    if any(not entry.optional and entry.name not in values for entry in asked):
        return None
    values = {name: value for name, value in values.items() if value is not None}
    try:
        stock = made_of(values)
    except QuantityError as error:
        where = wrong_in(values)
        at = fields.get(where, node)
        assert at is not None
        reader.problem(at, f"stock.{where.replace('_', ' ')}", str(error).rstrip("."))
        return None
    return _with_words(stock, frozenset(fields), words)


def _free_faces(node: Node | None) -> tuple[str, Any]:
    """Faces that free words of an earlier day name, with those words, which stay;
    nothing where the line is read as it is.
    """
    if node is None or not node.text:
        return "", None
    from jobsheet.catalog.trade.surfaces import read_faces
    from jobsheet.storage.words.stock_words import faces_in

    try:
        read_faces(node.text)
    except QuantityError:
        faces = faces_in(node.text)
        return (node.text.strip(), faces) if faces is not None else ("", None)
    return "", None


def _with_words(stock: Stock, said: frozenset[str], faces: str) -> Stock:
    """The facts that an earlier file has in words only."""
    from msgspec.structs import replace

    from jobsheet.storage.words.stock_words import with_what_words_say

    if stock.condition and not said & {"surfaces", "shape", "relieved"}:
        stock = with_what_words_say(stock)
    if faces:
        stock = replace(
            stock, condition="; ".join(one for one in (stock.condition, f"as bought: {faces}") if one)
        )
    return stock
