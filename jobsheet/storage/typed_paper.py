"""A file as typed text: what a card or the cabinet says, field by field, whether it can be used or not.

An editor works on this and not on what was understood of it: so nothing that it does not know, and nothing
that is only half typed, is ever lost. `storage/paper_file.py` reads and writes it.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import CommandError

#: The place of a text in a file: names of fields, and places in lists counted from nought.
Path = tuple[str | int, ...]


class Part(Struct, frozen=True):
    """A field of a group or, without a name, an entry of a list; with the comments that stand at it.

    `above` holds the lines over it as they are, empty ones too; `behind` what follows on its own line.
    """

    value: Value
    name: str = ""
    above: tuple[str, ...] = ()
    behind: str = ""


class Group(Struct, frozen=True):
    """Fields in their order; `flow` when they stand in braces on one line."""

    parts: tuple[Part, ...] = ()
    flow: bool = False


class Items(Struct, frozen=True):
    """The entries of a list; `flow` when they stand in brackets on one line."""

    parts: tuple[Part, ...] = ()
    flow: bool = False


Value = str | Group | Items


class Paper(Struct, frozen=True):
    """A whole file, with the comments below its last line."""

    root: Group
    below: tuple[str, ...] = ()


def empty(value: Value) -> bool:
    """Whether nothing is typed in it; an entry of a list counts, even one without a text."""
    if isinstance(value, str):
        return not value.strip()
    if isinstance(value, Items):
        return not value.parts
    return all(empty(part.value) for part in value.parts)


def words(path: Path) -> str:
    """The place as problems name it: `spindle.ranges[0].cap`."""
    text = ""
    for step in path:
        text += f"[{step}]" if isinstance(step, int) else f".{step}" if text else step
    return text


def at(paper: Paper, path: Path) -> Value | None:
    """What stands at a place, or None."""
    value: Value | None = paper.root
    for step in path:
        value = _inside(value, step)
    return value


def text_at(paper: Paper, path: Path) -> str:
    """The text at a place; empty where there is none."""
    value = at(paper, path)
    return value if isinstance(value, str) else ""


def entries_at(paper: Paper, path: Path) -> tuple[Value, ...]:
    """The entries of the list at a place."""
    value = at(paper, path)
    return tuple(part.value for part in value.parts) if isinstance(value, Items) else ()


def _inside(value: Value | None, step: str | int) -> Value | None:
    if isinstance(value, Items) and isinstance(step, int):
        return value.parts[step].value if 0 <= step < len(value.parts) else None
    if isinstance(value, Group) and isinstance(step, str):
        return next((part.value for part in value.parts if part.name == step), None)
    return None


def with_value(paper: Paper, path: Path, value: Value, order: tuple[tuple[str, ...], ...] = ()) -> Paper:
    """The file with another value at a place; groups on the way that are not there yet are made.

    Parameters
    ----------
    order : tuple of tuple of str
        For each step of the path that is a name: the names of its group in their order, so that a field
        which is new to the file comes to stand where a reader expects it

    Raises
    ------
    CommandError
        If the place is in an entry of a list that is not there.
    """
    root = _put(paper.root, path, value, order)
    assert isinstance(root, Group)
    return paper if root is paper.root else replace(paper, root=root)


def _put(into: Value | None, path: Path, value: Value, order: tuple[tuple[str, ...], ...]) -> Value:
    if not path:
        return into if into == value else value
    step, rest = path[0], path[1:]
    if isinstance(step, int):
        if not isinstance(into, Items) or not 0 <= step < len(into.parts):
            raise CommandError("This entry is not there any more.")
        part = into.parts[step]
        made = replace(part, value=_put(part.value, rest, value, order))
        if made.value is part.value:
            return into
        return replace(into, parts=(*into.parts[:step], made, *into.parts[step + 1 :]))
    group = into if isinstance(into, Group) else Group()
    for index, part in enumerate(group.parts):
        if part.name == step:
            inner = _put(part.value, rest, value, order[1:])
            if inner is part.value:
                return group
            made = replace(part, value=inner)
            return replace(group, parts=(*group.parts[:index], made, *group.parts[index + 1 :]))
    new = Part(_put(None, rest, value, order[1:]), step)
    place = _place(group, step, order[0] if order else ())
    return replace(group, parts=(*group.parts[:place], new, *group.parts[place:]))


def _place(group: Group, name: str, order: tuple[str, ...]) -> int:
    """Where a new field goes: behind the last of those that stand before it in the order."""
    before = set(order[: order.index(name)]) if name in order else {part.name for part in group.parts}
    places = [index for index, part in enumerate(group.parts, 1) if part.name in before]
    return places[-1] if places else 0


def with_entry(
    paper: Paper, path: Path, index: int, value: Value, order: tuple[tuple[str, ...], ...]
) -> Paper:
    """The file with a new entry in the list at a place; a list that is not there is made."""
    items = _items(paper, path)
    parts = (*items.parts[:index], Part(value), *items.parts[index:])
    return with_value(paper, path, replace(items, parts=parts), order)


def without_entry(paper: Paper, path: Path, index: int) -> Paper:
    """The file without an entry of the list at a place.

    Raises
    ------
    CommandError
        If there is no such entry.
    """
    items = _items(paper, path)
    if not 0 <= index < len(items.parts):
        raise CommandError("This entry is not there any more.")
    parts = (*items.parts[:index], *items.parts[index + 1 :])
    return with_value(paper, path, replace(items, parts=parts))


def with_entry_moved(paper: Paper, path: Path, index: int, to: int) -> Paper:
    """The file with an entry at another place of its list.

    Raises
    ------
    CommandError
        If there is no such entry, or no such place.
    """
    items = _items(paper, path)
    if not (0 <= index < len(items.parts) and 0 <= to < len(items.parts)):
        raise CommandError("It cannot be moved further.")
    parts = list(items.parts)
    parts.insert(to, parts.pop(index))
    return with_value(paper, path, replace(items, parts=tuple(parts)))


def _items(paper: Paper, path: Path) -> Items:
    found = at(paper, path)
    return found if isinstance(found, Items) else Items()
