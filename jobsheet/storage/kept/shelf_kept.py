"""Which folders are the person's shelves: a small file of their own folder. A
broken one is as good as none.
"""

from __future__ import annotations

import contextlib
from pathlib import Path

import msgspec

from jobsheet import paths
from jobsheet.errors import JobsheetError
from jobsheet.storage.disk import write_file

NAME = "shelf.json"
#: More shelves are not kept: the one that was first chosen goes.
MOST = 8


class Shelf(msgspec.Struct, frozen=True):
    """The folder that was chosen last, and those before it, in the order in which they were first chosen."""

    folder: str = ""
    known: tuple[str, ...] = ()


def _kept() -> Shelf:
    try:
        return msgspec.json.decode((paths.own_folder() / NAME).read_bytes(), type=Shelf)
    except (OSError, msgspec.DecodeError, UnicodeDecodeError):
        return Shelf()


def shelf_folder() -> Path | None:
    """The folder that was chosen last; None where none was, or it is not to be
    read. It need not be there any more.
    """
    found = _kept().folder
    return Path(found) if found else None


def shelves() -> tuple[Path, ...]:
    """All that were chosen so far; they are not looked at, for one of them may be away."""
    kept = _kept()
    return tuple(Path(one) for one in dict.fromkeys((*kept.known, kept.folder)) if one)


def keep_shelf(folder: Path) -> None:
    """Remember it. A place that cannot be written to is no reason to stop."""
    with contextlib.suppress(OSError, JobsheetError):
        before = [str(path) for path in shelves()]
        known = before if str(folder) in before else [*before, str(folder)][-MOST:]
        path = paths.own_folder() / NAME
        path.parent.mkdir(parents=True, exist_ok=True)
        write_file(path, msgspec.json.encode(Shelf(str(folder), tuple(known))).decode() + "\n")
