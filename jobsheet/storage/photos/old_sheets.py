"""Old sheets of a part that has no plan yet: scans and photographs kept as they are,
found by the words typed beside them.

`HM-77.old-sheet.yaml` says whose sheets they are and names each by its content (SHA-256); the
files lie in `old-sheets/` beside it.
"""

from __future__ import annotations

from hashlib import sha256
from pathlib import Path

from msgspec import Struct

from jobsheet.catalog.reading.strict_yaml import Node, parse, read_file
from jobsheet.errors import CommandError, DocumentError, Problem
from jobsheet.storage.photos.photographs_read import is_content

ENDING, FOLDER = ".old-sheet.yaml", "old-sheets"
KINDS = ("jpg", "png", "pdf")
#: What is said of the sheets, in the order in which it is written and shown.
SAID = (("words", "Words"), ("drawer", "Drawer"), ("who", "Put here by"), ("when", "On"))


class Sheet(Struct, frozen=True, kw_only=True):
    """One file: what it is, by its content, and what it was called."""

    content: str
    kind: str
    shows: str = ""

    @property
    def name(self) -> str:
        """The name of its file in the folder of old sheets."""
        return f"{self.content}.{self.kind}"


class OldSheets(Struct, frozen=True, kw_only=True):
    """The old sheets of one part, with what somebody typed beside them."""

    number: str
    name: str = ""
    words: str = ""
    drawer: str = ""
    who: str = ""
    when: str = ""
    sheets: tuple[Sheet, ...] = ()


def is_old_sheet(path: Path | str) -> bool:
    """Whether a file is one of these, by its name."""
    return str(path).endswith(ENDING)


def read_old_sheets(path: Path) -> OldSheets:
    """What such a file says. Raises DocumentError with the line of what is wrong."""
    node = parse(read_file(path), path.name)
    problems: list[Problem] = []
    fields = _fields(node, "", ("part", "sheets", *(key for key, _ in SAID)), problems)
    part = _fields(fields.get("part"), "part", ("number", "name"), problems)
    sheets = []
    listed = fields.get("sheets")
    for index, item in enumerate((listed.items or []) if listed is not None else []):
        where = f"sheets[{index}]"
        one = {
            key: value.text or ""
            for key, value in _fields(item, where, ("content", "kind", "shows"), problems).items()
        }
        if not is_content(one.get("content", "")) or one.get("kind") not in KINDS:
            sentence = "a sheet is named by the SHA-256 of its bytes and is jpg, png or pdf; put it on the shelf again"
            problems.append(Problem(item.line, where, sentence))
            continue
        sheets.append(Sheet(content=one["content"], kind=one["kind"], shows=one.get("shows", "")))
    number = part["number"].text if "number" in part else ""
    if not number:
        problems.append(Problem(None, "part.number", "the part has no number; write it"))
    if problems:
        raise DocumentError(path.name, tuple(problems))
    said = {key: fields[key].text or "" for key, _ in SAID if key in fields}
    name = part["name"].text or "" if "name" in part else ""
    return OldSheets(number=number or "", name=name, sheets=tuple(sheets), **said)


def _fields(
    node: Node | None, where: str, known: tuple[str, ...], problems: list[Problem]
) -> dict[str, Node]:
    """The fields of a group, those that nobody knows said."""
    if node is None or node.fields is None:
        line = node.line if node is not None else None
        problems.append(Problem(line, where, "here fields are wanted, each with its value"))
        return {}
    for key, value in node.fields.items():
        if key not in known:
            problems.append(Problem(value.line, f"{where}.{key}".strip("."), "unknown field; take it out"))
    return {key: value for key, value in node.fields.items() if key in known}


def sheet_bytes(record: Path, sheet: Sheet) -> bytes:
    """The bytes of one sheet; raises CommandError where they are gone or are others by now."""
    path = record.parent / FOLDER / sheet.name
    try:
        raw = path.read_bytes()
    except OSError as error:
        raise CommandError(
            f"{sheet.shows or 'The sheet'} is not there any more ({FOLDER}/{sheet.name[:8]}*.{sheet.kind}: {error.strerror})."
            " Put the file back."
        ) from None
    if sha256(raw).hexdigest() != sheet.content:
        raise CommandError(
            f"{sheet.shows or 'The sheet'} is another file now: its content is not that of its name."
        )
    return raw
