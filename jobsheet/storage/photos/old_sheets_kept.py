"""Puts old sheets on a shelf: the files as they are, and beside them whose they are.

Only what a camera wrote beside a picture is left out: where it was taken, by whose telephone.
"""

from __future__ import annotations

from collections.abc import Sequence
from hashlib import sha256
from pathlib import Path
from typing import Any

from jobsheet.errors import CannotWrite, CommandError
from jobsheet.paths import no_file
from jobsheet.storage.disk import write_file
from jobsheet.storage.exporting_files import free_file
from jobsheet.storage.photos.camera_words import without_camera_words
from jobsheet.storage.photos.kept_photographs import checked
from jobsheet.storage.photos.old_sheets import ENDING, FOLDER, SAID, OldSheets, Sheet
from jobsheet.storage.writing import emit

#: Of one file [bytes]: a page of 300 dpi has 1 to 10 MB (common practice, no source).
LARGEST = 60_000_000


def put_on_shelf(shelf: Path, said: OldSheets, files: Sequence[Path]) -> Path:
    """Keep the files and write beside them whose they are; the file that says so. Nothing is written over.

    Raises
    ------
    CommandError
        In one sentence: where the part has no number, nothing is given, or a file is none that can be shown.
    CannotWrite
        If the disk refuses.
    """
    if not said.number.strip():
        raise CommandError("The part has no number: write the number that stands on the old sheet.")
    if not files:
        raise CommandError("No sheet is given: choose its scans or photographs.")
    taken = [_read(path) for path in files]
    folder = shelf / FOLDER
    try:
        folder.mkdir(exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"{folder.name} cannot be made in {shelf.name}: {error.strerror}.") from error
    for sheet, raw in taken:
        if not (folder / sheet.name).exists():
            write_file(folder / sheet.name, raw)
    sheets = tuple({sheet.content: sheet for sheet, _ in taken}.values())
    data: dict[str, Any] = {"part": {"number": said.number.strip()}}
    if said.name:
        data["part"]["name"] = said.name
    data |= {key: text for key, _ in SAID if (text := getattr(said, key).strip())}
    data["sheets"] = [
        {key: text for key in ("content", "kind", "shows") if (text := getattr(sheet, key))}
        for sheet in sheets
    ]
    target = free_file(shelf, said.number, ENDING)
    write_file(target, "\n".join(emit(data)) + "\n")
    return target


def _read(path: Path) -> tuple[Sheet, bytes]:
    """A file with what it is; what a camera wrote beside a picture is left out."""
    try:
        if other := no_file(path):
            raise CommandError(f"{path.name or path} is {other}, not a scan.")
        if path.stat().st_size > LARGEST:
            raise CommandError(f"{path.name} has more than {LARGEST // 10**6} MB: save it smaller.")
        raw = path.read_bytes()
    except (OSError, ValueError) as error:
        raise CommandError(
            f"{path.name} cannot be read: {getattr(error, 'strerror', None) or error}."
        ) from None
    if raw.startswith(b"%PDF"):
        kind = "pdf"
    else:
        try:
            kind = checked(raw, path.name).kind
        except CommandError as error:
            raise CommandError(f"{str(error).rstrip('.')}, or as PDF.") from None
        raw = without_camera_words(raw)
    return Sheet(content=sha256(raw).hexdigest(), kind=kind, shows=path.stem), raw
