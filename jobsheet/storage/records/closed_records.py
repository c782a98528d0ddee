"""Files that only grow, a record at a time: text, a line a field, closed by a line with the record's id.

The closing line is what makes a record whole: a crash while writing leaves one without it. A
record is written in one go and flushed to the disk before anything else is said; what a crash left
half is kept and reported, and the next record begins behind it. Nothing is ever changed: a wrong
record is struck out by a later one.
"""

from __future__ import annotations

import os
import re
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path

from jobsheet.errors import CannotWrite, DocumentError, Problem
from jobsheet.paths import no_file
from jobsheet.storage.disk import digest, flush_folder

#: So many characters of the hash: enough to tell the records of a lifetime apart.
ID_LENGTH = 12
END = "end"
_CLOSED = re.compile(rf"^{END}:\s*[0-9a-f]{{{ID_LENGTH}}}$")
_CONTROL = re.compile(r"[\x00-\x1f\x7f\x85\u2028\u2029\ud800-\udfff]+")
#: A file beyond this is not ours [bytes]: a record is about 500.
LARGEST = 20_000_000


def one_line(text: str) -> str:
    """A text as it may stand behind a colon."""
    return _CONTROL.sub(" ", text).strip()


def note_lines(note: str) -> list[str]:
    """A note of several lines, one `note:` each."""
    lines = [one_line(line) for line in note.replace("\r\n", "\n").replace("\r", "\n").split("\n")]
    text = "\n".join(lines).strip("\n")
    return [f"note: {line}".rstrip() for line in text.split("\n")] if text else []


def id_of(lines: Iterable[str]) -> str:
    """A record's id: a short hash of its lines, so that two files know a record
    again and a changed one is noticed.
    """
    return digest("\n".join(lines))[:ID_LENGTH]


def closed(lines: list[str]) -> str:
    """The whole record, with its closing line."""
    return "\n".join([*lines, f"{END}: {id_of(lines)}"]) + "\n"


def is_closed(line: str) -> bool:
    """Whether a line closes a record."""
    return bool(_CLOSED.match(line))


def torn_words(first: int, lines: list[str], again: str) -> str:
    """What is said of a record that was never finished; `again` is what to do."""
    last = first + len(lines) - 1
    where = f"lines {first} to {last} are" if last > first else f"line {first} is"
    return f"{where} a record that was never finished: it does not count; {again}"


def blocks(raw: bytes) -> Iterator[tuple[int, list[str]]]:
    """Lines between blank ones, remarks left out; with the number of the first."""
    lines = [line.rstrip("\r") for line in raw.decode("utf-8", "replace").removeprefix("\ufeff").split("\n")]
    block: list[str] = []
    first = 1
    for index, line in enumerate([*lines, ""], 1):
        if line.startswith("#"):
            continue
        if line.strip():
            if not block:
                first = index
            block.append(line)
        elif block:
            yield first, block
            block = []


def bytes_of(path: Path, what: str) -> bytes:
    """The file as it lies there. Raises DocumentError where it is none, or far too large for `what`."""
    try:
        if other := no_file(path):
            raise DocumentError(path.name, (Problem(None, "", f"it cannot be read: this is {other}"),))
        if path.stat().st_size > LARGEST:
            raise DocumentError(path.name, (Problem(None, "", f"this is far too large for {what}"),))
        return path.read_bytes()
    except OSError as error:
        raise DocumentError(
            path.name, (Problem(None, "", f"it cannot be read: {error.strerror or error}"),)
        ) from None


def add(path: Path, what: str, head: str, records: Iterable[str], proved: Callable[[bytes], None]) -> None:
    """Append whole records in one write and flush them to the disk; a torn one before them is left as it is.

    Parameters
    ----------
    head : str
        What a new file begins with
    proved : callable
        Asked of the bytes that the file would have, before one of them is on the disk;
        what it raises keeps the file as it is

    Raises
    ------
    CannotWrite
        If the disk refuses; the records before are still there.
    """
    text = "".join("\n" + record for record in records)
    try:
        with path.open("ab") as stream:
            before = bytes_of(path, what) if stream.tell() else b""
            if not before:
                text = head + text
            elif not before.endswith(b"\n"):
                text = "\n" + text
            proved(before + text.encode())
            stream.write(text.encode())
            stream.flush()
            os.fsync(stream.fileno())
        if not before:
            flush_folder(path.parent)
    except OSError as error:
        raise CannotWrite(
            f"{path.name} cannot be written: {error.strerror or error}. The records before are still there."
        ) from None
