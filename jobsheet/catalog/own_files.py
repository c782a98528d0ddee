"""A catalogue file that a person wrote, in their own folder: read strictly, every problem with its line.

No tags (they construct objects), no aliases (a few lines can grow into gigabytes), no name twice (the last
would silently win), a bound on size and depth. Every scalar stays text.
"""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

from msgspec import Struct

from jobsheet.errors import DocumentError, Problem

#: A catalogue of a thousand materials is some 1 MB; more is another kind of file (common sense, no source).
LARGEST_FILE = 1_000_000
#: A row's speeds nest five deep.
DEEPEST = 12
_PLAIN = {"tag:yaml.org,2002:str", "tag:yaml.org,2002:map", "tag:yaml.org,2002:seq"}

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
        If it cannot be opened, is no text, is not YAML or uses what is refused here.
    """
    import yaml

    text = _text(path)
    loader = getattr(yaml, "CBaseLoader", yaml.BaseLoader)(text)
    try:
        root = loader.get_single_node()
    except yaml.MarkedYAMLError as error:
        mark = error.problem_mark or error.context_mark
        raise _refused(path.name, str(error.problem or error), mark.line + 1 if mark else None) from None
    except (yaml.YAMLError, RecursionError):
        raise _refused(
            path.name, "a character here cannot stand in such a file, or it nests too deep"
        ) from None
    finally:
        loader.dispose()
    if root is None:
        raise _refused(path.name, "the file is empty")
    walk = _Walk(path.name)
    return OwnFile(path.name, walk.value(root, ()), walk.lines)


def _text(path: Path) -> str:
    try:
        if path.is_file() and path.stat().st_size > LARGEST_FILE:
            raise _refused(path.name, "too large for a catalogue; is it another kind of file?")
        return path.read_text(encoding="utf-8-sig")
    except OSError as error:
        raise _refused(path.name, f"it cannot be opened: {error.strerror or error}") from None
    except UnicodeDecodeError:
        raise _refused(path.name, "this is not text in UTF-8; is it another kind of file?") from None


def _refused(name: str, sentence: str, line: int | None = None) -> DocumentError:
    return DocumentError(name, (Problem(line, "", sentence),))


class _Walk:
    """Turns the parser's nodes into plain values and keeps the line of each."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.lines: dict[Way, int] = {}
        self._seen: set[int] = set()

    def value(self, node: Any, way: Way) -> Any:
        """The value of a node, and of all below it."""
        line = node.start_mark.line + 1
        self.lines.setdefault(way, line)
        if id(node) in self._seen:
            raise _refused(self.name, "an alias (*name) cannot be used here; write the value again", line)
        self._seen.add(id(node))
        if node.tag not in _PLAIN:
            raise _refused(self.name, f"a tag ({node.tag}) cannot be used here", line)
        if len(way) > DEEPEST:
            raise _refused(self.name, "it nests too deep for such a file", line)
        if isinstance(node.value, str):
            return node.value
        if node.tag.endswith("seq"):
            return [self.value(item, (*way, str(index + 1))) for index, item in enumerate(node.value)]
        return self._mapping(node.value, way)

    def _mapping(self, pairs: Any, way: Way) -> dict[str, Any]:
        found: dict[str, Any] = {}
        for key, item in pairs:
            line = key.start_mark.line + 1
            if not isinstance(key.value, str):
                raise _refused(self.name, "a name is missing before the colon", line)
            if key.value in found:
                raise _refused(self.name, f"“{key.value}” stands here twice", line)
            self.lines[(*way, key.value)] = line
            found[key.value] = self.value(item, (*way, key.value))
        return found
