"""A catalogue file that a person wrote, in their own folder: read strictly, every problem with its line."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

from msgspec import Struct

from jobsheet.catalog.reading.strict_yaml import Node, parse, read_file
from jobsheet.errors import DocumentError, Problem

#: Name, time of last change [ns] and size of each file of a folder.
Stamp = tuple[tuple[str, int, int], ...]
#: Where something stands in a file: the names that lead to it.
Way = tuple[str, ...]


class OwnFile(Struct, frozen=True):
    """What a file holds as text, lists and mappings, and the line of everything in it."""

    name: str
    data: Any
    lines: dict[Way, int]

    def problem(self, way: Way, sentence: str) -> Problem:
        """A problem at that place, with its line."""
        known = next(
            (self.lines[way[:end]] for end in range(len(way), -1, -1) if way[:end] in self.lines), None
        )
        return Problem(known, " → ".join(way), sentence)


def stamp(folder: Path) -> Stamp:
    """Which files a folder of one's own holds and when each changed: one look where there is no such folder.

    Raises
    ------
    DocumentError
        If the folder is there but cannot be looked into.
    """
    try:
        with os.scandir(folder) as entries:
            found = [
                (entry.name, (seen := entry.stat()).st_mtime_ns, seen.st_size)
                for entry in entries
                if entry.name.endswith((".yaml", ".yml")) and not entry.name.startswith(".")
            ]
    except (FileNotFoundError, NotADirectoryError):
        return ()
    except OSError as error:
        raise _refused(folder.name, f"the folder cannot be opened: {error.strerror or error}") from None
    return tuple(sorted(found))


def read_own(path: Path) -> OwnFile:
    """The content of one file.

    Raises
    ------
    DocumentError
        If it cannot be opened, is no text, is not YAML or uses what is refused in `strict_yaml`.
    """
    lines: dict[Way, int] = {}
    node = parse(read_file(path), path.name)
    return OwnFile(path.name, _plain(node, (), lines), lines)


def _plain(node: Node, way: Way, lines: dict[Way, int]) -> Any:
    """The value of a node, and of all below it; keeps the line of each."""
    lines[way] = node.line
    if node.fields is not None:
        return {name: _plain(other, (*way, name), lines) for name, other in node.fields.items()}
    if node.items is not None:
        return [_plain(other, (*way, str(place)), lines) for place, other in enumerate(node.items, 1)]
    return node.text


def _refused(name: str, sentence: str) -> DocumentError:
    return DocumentError(name, (Problem(None, "", sentence),))
