"""Typed text as a file: read with its comments, written so that the same typed text gives the same bytes.

Comments that stand above a field, or behind it on its line, are kept with it. One between the lines of a list or group in
brackets that runs over several lines is not, nor is the manner in which a text was quoted.
"""

from __future__ import annotations

import re
from typing import Any

from jobsheet.catalog.reading.strict_yaml import parse
from jobsheet.storage.typed_paper import Group, Items, Paper, Part, Value, empty
from jobsheet.storage.writing import blockable, scalar


def paper_from_text(text: str, name: str) -> Paper:
    """A file as typed text.

    Raises
    ------
    DocumentError
        Only if it is not such a file at all; what its fields say is not looked at.
    """
    parse(text, name)  # refuses, with a sentence, what could do harm or is not YAML
    import yaml

    base: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
    loader = base(text)
    try:
        node = loader.get_single_node()
    finally:
        loader.dispose()
    walk = _Walk(text.splitlines())
    root = walk.value(node)
    below = walk.above(len(walk.lines))
    return Paper(root if isinstance(root, Group) else Group((Part(root, ""),)), below)


class _Walk:
    """Turns parsed nodes into parts, taking up the comments on the way; each line is taken once."""

    def __init__(self, lines: list[str]) -> None:
        self.lines = lines
        self._taken = -1

    def above(self, line: int) -> tuple[str, ...]:
        """The empty lines and comments straight above a line that nobody has yet."""
        first = line
        while first - 1 > self._taken and re.match(r"\s*(#|$)", self.lines[first - 1]):
            first -= 1
        self._taken = max(self._taken, line)
        return tuple(one.strip() for one in self.lines[first:line])

    def _behind(self, node: Any) -> str:
        """The comment behind a value that ends on this line."""
        line = node.end_mark.line
        block = node.style in ("|", ">") if node.id == "scalar" else not node.flow_style
        if block or line >= len(self.lines):
            return ""
        self._taken = max(self._taken, line)
        found = re.match(r"\s+(#.*)$", self.lines[line][node.end_mark.column :])
        return found[1].rstrip() if found else ""

    def value(self, node: Any) -> Value:
        if node.id == "scalar":
            return str(node.value)
        if node.id == "sequence":
            return Items(tuple(self._part("", item, item) for item in node.value), flow=bool(node.flow_style))
        return Group(
            tuple(self._part(key.value, key, value) for key, value in node.value), flow=bool(node.flow_style)
        )

    def _part(self, name: str, first: Any, node: Any) -> Part:
        above = self.above(first.start_mark.line) if first.start_mark.line > self._taken else ()
        return Part(self.value(node), name, above, self._behind(node))


def paper_text(paper: Paper) -> str:
    """The file: the same typed text gives the same bytes. Fields without a text are left out."""
    lines = _group(paper.root, 0)
    return "\n".join([*lines, *paper.below]) + "\n"


def _group(group: Group, indent: int) -> list[str]:
    """The lines of a group's fields."""
    pad = "  " * indent
    lines: list[str] = []
    for part in group.parts:
        if empty(part.value):
            continue
        lines += [f"{pad}{one}" if one else "" for one in part.above]
        behind = f"  {part.behind}" if part.behind else ""
        name = scalar(part.name, inside_flow=True)
        lines += _named(name, part.value, indent, behind)
    return lines


def _named(name: str, value: Value, indent: int, behind: str) -> list[str]:
    """One field: its name, and its value on the same line or below."""
    pad = "  " * indent
    if isinstance(value, str):
        if "\n" in value and blockable(value):
            return [f"{pad}{name}: |-", *(f"{pad}  {one}" if one else "" for one in value.split("\n"))]
        return [f"{pad}{name}: {scalar(value)}{behind}"]
    if value.flow:
        return [f"{pad}{name}: {_flow(value)}{behind}"]
    if isinstance(value, Group):
        return [f"{pad}{name}:", *_group(value, indent + 1)]
    lines = [f"{pad}{name}:"]
    for part in value.parts:
        lines += [f"{pad}  {one}" if one else "" for one in part.above]
        lines += _entry(part, indent + 1)
    return lines


def _entry(part: Part, indent: int) -> list[str]:
    """One entry of a list."""
    pad = "  " * indent
    behind = f"  {part.behind}" if part.behind else ""
    if isinstance(part.value, str):
        return [f"{pad}- {scalar(part.value)}{behind}"]
    if part.value.flow or isinstance(part.value, Items):
        return [f"{pad}- {_flow(part.value)}{behind}"]
    inner = _group(part.value, indent + 1)
    if not inner:
        return [f"{pad}- {{}}"]
    at = next(index for index, line in enumerate(inner) if line.strip() and not line.lstrip().startswith("#"))
    inner[at] = f"{pad}- {inner[at].lstrip()}"
    return inner


def _flow(value: Value) -> str:
    """A value on one line."""
    if isinstance(value, str):
        return scalar(value, inside_flow=True)
    if isinstance(value, Items):
        return "[" + ", ".join(_flow(part.value) for part in value.parts) + "]"
    fields = (
        f"{scalar(part.name, inside_flow=True)}: {_flow(part.value)}"
        for part in value.parts
        if not empty(part.value)
    )
    return "{" + ", ".join(fields) + "}"
