"""What is exported: under a name that every system can hold, and never in the
place of anything but an older export.
"""

from __future__ import annotations

import re
from pathlib import Path
from unicodedata import normalize

from jobsheet.errors import CannotWrite
from jobsheet.paths import no_file
from jobsheet.storage.disk import write_file
from jobsheet.units.lazily import pattern

#: How the files begin that are exported: by this an older one is known, whatever it is called.
_STARTS = {
    b"%PDF": "PDF", b"<svg": "SVG drawing", b"PK": "archive", b"path,": "table of a shelf", b"[": "table of a shelf",
}  # fmt: skip
#: What one system or another cannot have in a name.
_NOT_IN_NAMES = pattern('[\\x00-\\x1f\\x7f-\\x9f\\u2028\\u2029\\ud800-\\udfff\\ufffe\\uffff/\\\\\\\\:*?"<>|]')
#: Names that one system keeps for devices, whatever ends them.
_RESERVED = pattern(r"^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\.|$)", re.IGNORECASE)
#: So many bytes of a name every system takes, with room for what stands beside it while it is written.
LONGEST = 200


def file_name(words: str, ending: str) -> str:
    """A name to propose, such as `HM-100.pdf`: what another system could not hold becomes a hyphen.

    A person who types another name has what they typed; this is only for names
    that the program makes of their words.
    """
    name = _NOT_IN_NAMES.sub("-", words.removesuffix(ending)).strip(" .")
    name = name.encode()[: LONGEST - len(ending)].decode(errors="ignore").rstrip(" .") or "job"
    return f"{'-' if _RESERVED.match(name) else ''}{name}{ending}"


def free_file(folder: Path, words: str, ending: str) -> Path:
    """A file of that name that is not there yet, with a number where one is; names that
    differ by case alone are one name.

    Nothing is looked at but names. Where the folder cannot be read, who writes the file says so.
    """
    there = _names(folder)
    name, number = file_name(words, ending), 1
    while normalize("NFC", name).casefold() in there:
        number += 1
        name = file_name(f"{words}-{number}", ending)
    return folder / name


def same_name(path: Path) -> str:
    """The name of another file beside that some computers hold for the same, for it differs by
    case alone; empty where none does.
    """
    if path.exists():
        return ""
    return _names(path.parent).get(normalize("NFC", path.name).casefold(), "")


def _names(folder: Path) -> dict[str, str]:
    """The names in a folder as computers compare them that take no note of case."""
    try:
        return {normalize("NFC", path.name).casefold(): path.name for path in folder.iterdir()}
    except OSError:
        return {}


def refuse_other(target: Path, start: bytes = b"%PDF") -> None:
    """Refuse a place where something else lies than an older export of the same
    kind; an empty file is nothing.

    Raises
    ------
    CannotWrite
        With what lies there.
    """
    kind = _STARTS[start]
    try:
        if other := no_file(target):
            raise CannotWrite(f"{target.name or target} is {other}; choose another name.")
        if not target.exists() or not target.stat().st_size:
            return
        with target.open("rb") as stream:
            there = stream.read(200).lstrip(b"\xef\xbb\xbf \r\n\t")
    except OSError as error:
        raise CannotWrite(
            f"{target.name} cannot be written: {error.strerror or error}. Choose another name."
        ) from None
    if not there.startswith(start) and not (
        start == b"<svg" and there.startswith(b"<?xml") and b"<svg" in there
    ):
        raise CannotWrite(
            f"{target.name} is there already and is no {kind}; choose another name for the export."
        )


def export_file(target: Path, content: bytes) -> None:
    """Write an export where nothing else is lost by it. Raises CannotWrite."""
    start = next((start for start in _STARTS if content.startswith(start)), b"%PDF")
    refuse_other(target, start)
    write_file(target, content)
