"""Which folder is the person's shelf: a small file of their own folder. A broken one is as good as none."""

from __future__ import annotations

import contextlib
from pathlib import Path

import msgspec

from jobsheet import paths
from jobsheet.errors import JobsheetError
from jobsheet.storage.disk import write_file

NAME = "shelf.json"


class Shelf(msgspec.Struct, frozen=True):
    """The folder, as it was chosen."""

    folder: str = ""


def shelf_folder() -> Path | None:
    """The folder that was chosen last; None where none was, or it is not to be read. It need not be there any more."""
    try:
        found = msgspec.json.decode((paths.own_folder() / NAME).read_bytes(), type=Shelf)
    except (OSError, msgspec.DecodeError, UnicodeDecodeError):
        return None
    return Path(found.folder) if found.folder else None


def keep_shelf(folder: Path) -> None:
    """Remember it. A place that cannot be written to is no reason to stop."""
    with contextlib.suppress(OSError, JobsheetError):
        path = paths.own_folder() / NAME
        path.parent.mkdir(parents=True, exist_ok=True)
        write_file(path, msgspec.json.encode(Shelf(str(folder))).decode() + "\n")
