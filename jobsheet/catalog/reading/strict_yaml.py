"""YAML as people write it, read strictly: every scalar is text, and nothing in a file can do anything.

No aliases (a few lines can grow into gigabytes), no tags (they construct objects), no duplicate keys
(the last would silently win), a bound on size. Each node knows its line.
"""

from __future__ import annotations

import gc
import re
from pathlib import Path
from typing import Any

from msgspec import Struct

from jobsheet.errors import DocumentError, Problem
from jobsheet.paths import no_file
from jobsheet.units.lazily import pattern

#: A job of a thousand operations is some 350 kB; more is not a job (common sense, no source).
LARGEST_FILE = 5_000_000
#: Jobs and cards nest six deep, a material's speeds five.
DEEPEST = 20
_PLAIN = {"tag:yaml.org,2002:str", "tag:yaml.org,2002:map", "tag:yaml.org,2002:seq"}
#: What a merge by a version-control system leaves in a file where both sides changed a line.
_SIGNS = ("<<<<<<<", ">>>>>>>")
_TWO_REVISIONS = pattern(r"(?m)^(?P<sign><{7}|>{7})(?: .*)?$")
#: Characters that no such file may hold, and that files of an earlier day have: fields took them, and
#: the job could not be opened again. They are read as the sign for what is no character, so that the
#: job is there and the place is seen.
_MENDED = dict.fromkeys((*range(0x80, 0x85), *range(0x86, 0xA0), 0xFFFE, 0xFFFF), "\ufffd")


class Node(Struct):
    """One value of a file: text, a list or a mapping, with the line it stands in."""

    line: int
    text: str | None = None
    items: list[Node] | None = None
    fields: dict[str, Node] | None = None
    #: Whether an unquoted `#` stands where the value should be, or `#7` behind it: it begins a comment.
    comment: bool = False

    @property
    def what(self) -> str:
        """What this is, for a sentence."""
        return (
            "a list" if self.items is not None else "a group of fields" if self.fields is not None else "text"
        )


def read_file(path: Path) -> str:
    """The text of a file.

    Raises
    ------
    DocumentError
        If there is no such file, or it is a folder, too large, or not text.
    """
    name = path.name or str(path)
    try:
        if (other := no_file(path)) == "a folder":
            raise _refused(name, "this is a folder; name a file in it")
        if other:
            raise _refused(name, f"this is {other}, not a file; name a file")
        if not path.exists():
            raise _refused(name, f"there is no file here: {path}")
        size = path.stat().st_size
        if size > LARGEST_FILE:
            raise _refused(
                name, f"{size / 1e6:.0f} MB is too large for such a file; is it another kind of file?"
            )
        raw = path.read_bytes()
    except OSError as error:
        raise _refused(name, f"it cannot be opened: {error.strerror or error}") from None
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        raise _refused(name, "this is not text in UTF-8; is it another kind of file?", line) from None
    if "\x00" in text:
        raise _refused(name, "this is not a text file", text[: text.index("\x00")].count("\n") + 1)
    return text


def _refused(name: str, sentence: str, line: int | None = None) -> DocumentError:
    return DocumentError(name, (Problem(line, "", sentence),))


def mended(text: str) -> str:
    """A text without the characters that no such file may hold: in their place stands the sign for none."""
    return text.translate(_MENDED)


def parse(text: str, name: str) -> Node:
    """The nodes of a YAML text.

    Raises
    ------
    DocumentError
        With the line, if it is not YAML, holds more than one document, or uses what is refused here.
    """
    return nodes(text, name)


def nodes(text: str, name: str) -> Node:
    """The nodes of a text, parsed; a start stands something in here that knows
    the last texts. Raises as `parse`.
    """
    if any(sign in text for sign in _SIGNS) and (match := _TWO_REVISIONS.search(text)):
        raise _refused(
            name,
            f"two revisions were put side by side here by what keeps versions of the file ({match['sign']}):"
            " keep the lines of one of them and take the three lines with the signs <<<<<<< ======= >>>>>>> out",
            text[: match.start("sign")].count("\n") + 1,
        )
    import yaml

    base: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
    text = mended(text)
    loader = base(text)
    collects = gc.isenabled()
    # Nothing of a tree that is being built can go: looking for circles in it again and again
    # takes half of a large file's time.
    gc.disable()
    try:
        root = loader.get_single_node()
    except yaml.MarkedYAMLError as error:
        # An open quote is complained of at the end of the file; the person looks for its beginning.
        opened = "quoted scalar" in (error.context or "")
        mark = (error.context_mark if opened else error.problem_mark) or error.context_mark
        raise _refused(name, _explained(error, text), mark.line + 1 if mark else None) from None
    except (yaml.YAMLError, RecursionError) as error:
        where = getattr(error, "position", None)
        line = text[:where].count("\n") + 1 if isinstance(where, int) else None
        sentence = (
            "it nests too deep"
            if isinstance(error, RecursionError)
            else "a character here cannot stand in such a file"
        )
        raise _refused(name, sentence, line) from None
    else:
        if root is None:
            raise _refused(name, "the file is empty", 1)
        return _Walk(name, text.splitlines()).node(root, 0)
    finally:
        loader.dispose()
        if collects:
            gc.enable()


def _explained(error: Any, text: str) -> str:
    """What a parser's complaint means to somebody who does not know YAML."""
    problem = str(error.problem or "")
    mark = error.problem_mark
    line = text.splitlines()[mark.line] if mark and mark.line < len(text.splitlines()) else ""
    if "exceeded maximum" in problem or "nesting" in problem:
        return "it nests too deep for such a file"
    if "mapping values are not allowed" in problem:
        return "a colon too many: put the text in quotes, or begin a new line"
    if "tab" in problem or "\t" in line[: len(line) - len(line.lstrip())]:
        return "indent with blanks, not with a tab"
    if "could not find expected ':'" in problem:
        return "a field needs a colon behind its name"
    if "found undefined alias" in problem or "found unknown" in problem or "alias" in problem:
        return "* and & have a meaning of their own here: put the text in quotes"
    if "expected a single document" in (error.context or "") + problem:
        return "one file holds one document: take out the line ---"
    if "quoted scalar" in (error.context or "") + problem:
        return "a quote is opened here and not closed"
    if "did not find expected" in problem and ("']'" in problem or "'}'" in problem):
        return "a bracket is opened here and not closed, or a comma is missing"
    return f"this is not written as such a file is: {problem or 'unknown'}; look at the indentation and the quotes"


class _Walk:
    """Turns parsed nodes into our own, refusing what can do harm."""

    def __init__(self, name: str, lines: list[str]) -> None:
        self._name = name
        self._lines = lines
        self._seen: set[int] = set()
        self._keep: list[Any] = []

    def node(self, node: Any, depth: int) -> Node:
        line = node.start_mark.line + 1
        if depth > DEEPEST:
            raise _refused(self._name, "it nests too deep for such a file", line)
        if id(node) in self._seen:
            raise _refused(self._name, "references (& and *) are not used here: write the value out", line)
        self._seen.add(id(node))
        self._keep.append(node)
        if node.tag not in _PLAIN:
            raise _refused(
                self._name,
                f"the tag {node.tag.removeprefix('tag:yaml.org,2002:')} is not used here: write the value alone",
                line,
            )
        if isinstance(node.value, str):
            comment = not node.style and self._number_behind(node)
            return Node(line, text=node.value, comment=comment)
        if node.id == "sequence":
            return Node(line, items=[self.node(item, depth + 1) for item in node.value])
        fields: dict[str, Node] = {}
        for key, value in node.value:
            if not isinstance(key.value, str):
                raise _refused(
                    self._name, "the name of a field is a word, not a list", key.start_mark.line + 1
                )
            if key.value in fields:
                raise _refused(
                    self._name,
                    f"“{key.value}” stands twice in the same place; take one out (the first is in line {fields[key.value].line})",
                    key.start_mark.line + 1,
                )
            found = self.node(value, depth + 1)
            # A person looks for the name, also where what belongs to it begins in the next line.
            found.line = key.start_mark.line + 1
            if found.text == "" and self._comment_behind(key):
                found.comment = True
            fields[key.value] = found
        return Node(line, fields=fields)

    def _comment_behind(self, key: Any) -> bool:
        """Whether a # stands where the value of this key should be."""
        rest = self._lines[key.end_mark.line][key.end_mark.column :]
        return bool(re.match(r"\s*:\s*#", rest))

    def _number_behind(self, node: Any) -> bool:
        """Whether an unquoted text is followed by `#7` or the like, which YAML takes for a comment."""
        if not node.value or node.end_mark.line >= len(self._lines):
            return False
        line = self._lines[node.end_mark.line]
        return "#" in line and bool(re.match(r"\s+#\d", line[node.end_mark.column :]))
