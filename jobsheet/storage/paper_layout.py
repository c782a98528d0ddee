"""What an editor of typed text knows of a file: its groups, fields and lists, as
data. Nothing here knows a machine.

A field is an `Entry`, as in the forms of the job, named as the file names it. Headings part the
page and are no level of the file.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from jobsheet.operations.entry import Entry
from jobsheet.storage.typed_paper import Group, Items, Paper, Part, Path, Value, text_at

#: Where a number comes from, in the order of the choice.
MARKS = ("plate", "measured", "guessed")


class Ask(Struct, frozen=True):
    """One text of the file: what it asks, how it is found out, and whether it says where it comes from."""

    entry: Entry
    how: str = ""
    marked: bool = False

    @property
    def name(self) -> str:
        """As the file calls it."""
        return self.entry.name


class Inner(Struct, frozen=True, kw_only=True):
    """A group of the file."""

    name: str
    title: str
    parts: tuple[Layer, ...]
    how: str = ""


class Rows(Struct, frozen=True, kw_only=True):
    """A list of the file. An entry is a group of `parts`; `one` is what a person calls it, `shown` names the
    fields of a closed row, `start` is what a new entry holds.
    """

    name: str
    title: str
    one: str
    parts: tuple[Layer, ...]
    shown: tuple[str, ...]
    start: tuple[tuple[str, str], ...] = ()
    how: str = ""
    flow: bool = True

    def new(self) -> Group:
        """A new entry."""
        return Group(tuple(Part(text, name) for name, text in self.start), flow=self.flow)


Layer = Ask | Inner | Rows


class Heading(Struct, frozen=True, kw_only=True):
    """What stands under one line of the page."""

    title: str
    parts: tuple[Layer, ...]
    how: str = ""


class Layout(Struct, frozen=True, kw_only=True):
    """A whole kind of file: its headings, and the texts every file of the kind
    begins with, such as its format.
    """

    headings: tuple[Heading, ...]
    first: tuple[str, ...] = ("format",)

    @property
    def parts(self) -> tuple[Layer, ...]:
        """What lies at the top level of the file, in the order of the page."""
        return tuple(part for heading in self.headings for part in heading.parts)

    def orders(self, path: Path) -> tuple[tuple[str, ...], ...]:
        """For each name of a path, the names of its group in their order."""
        level: tuple[Layer, ...] = self.parts
        orders: list[tuple[str, ...]] = []
        for step in path:
            if isinstance(step, int):
                continue
            names = tuple(part.name for part in level)
            orders.append((*self.first, *names) if not orders else names)
            inner = next((part for part in level if part.name == step), None)
            level = inner.parts if isinstance(inner, (Inner, Rows)) else ()
        return tuple(orders)

    def find(self, path: Path) -> Layer | None:
        """What the layout says of a place."""
        level: tuple[Layer, ...] = self.parts
        found: Layer | None = None
        for step in path:
            if isinstance(step, int):
                continue
            found = next((part for part in level if part.name == step), None)
            level = found.parts if isinstance(found, (Inner, Rows)) else ()
        return found


def asks(parts: tuple[Layer, ...], above: Path = ()) -> Iterator[tuple[Path, Ask]]:
    """Every text of a layout with its place; that of a list's entries without their numbers."""
    for part in parts:
        if isinstance(part, Ask):
            yield (*above, part.name), part
        else:
            yield from asks(part.parts, (*above, part.name))


def places(parts: tuple[Layer, ...], value: Value | None, above: Path = ()) -> Iterator[tuple[Path, Ask]]:
    """Every text that a file has room for, with its place in that file."""
    for part in parts:
        path = (*above, part.name)
        inside = _named(value, part.name)
        if isinstance(part, Ask):
            yield path, part
        elif isinstance(part, Inner):
            yield from places(part.parts, inside, path)
        elif isinstance(inside, Items):
            for index, entry in enumerate(inside.parts):
                yield from places(part.parts, entry.value, (*path, index))


def guessed(layout: Layout, paper: Paper) -> tuple[tuple[Path, Ask, str], ...]:
    """Every number of a file that is only guessed: its place, what it is, the number as it stands."""
    found = []
    for path, ask in places(layout.parts, paper.root):
        number, mark = parted(text_at(paper, path))
        if ask.marked and mark == "guessed":
            found.append((path, ask, number))
    return tuple(found)


def _named(value: Value | None, name: str) -> Value | None:
    if not isinstance(value, Group):
        return None
    return next((part.value for part in value.parts if part.name == name), None)


# --- a number with where it comes from ---


def parted(text: str) -> tuple[str, str]:
    """A text such as `0.81, guessed` as its number and its mark; either may be empty."""
    number, comma, mark = text.rpartition(",")
    if comma and mark.strip() in MARKS:
        return number, mark.strip()
    return text, ""


def joined(number: str, mark: str) -> str:
    """The text again; a number whose source nobody has given counts as guessed."""
    return f"{number}, {mark or 'guessed'}" if number.strip() else ""
