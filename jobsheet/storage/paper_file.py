"""Typed text as a file: read with its comments, written so that the same typed text gives the same bytes.

Comments that stand above a field, or behind it on its line, are kept with it. One between the lines of a list
or group in brackets that runs over several lines is not, nor is the manner in which a text was quoted.
"""

from __future__ import annotations

import re
from typing import Any

from jobsheet.catalog.reading.strict_yaml import mended, parse
from jobsheet.storage.typed_paper import Group, Items, Paper, Part, Value


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
    text = mended(text)
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
        return tuple(other.strip() for other in self.lines[first:line])

    def _behind(self, node: Any) -> str:
        """The comment behind a value that ends on this line."""
        line = node.end_mark.line
        block = node.style in ("|", ">") if node.id == "scalar" else not node.flow_style
        if block or line >= len(self.lines):
            return ""
        self._taken = max(self._taken, line)
        match = re.match(r"\s+(#.*)$", self.lines[line][node.end_mark.column :])
        return match[1].rstrip() if match else ""

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
