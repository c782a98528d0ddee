"""A whole shelf as one archive: plain files in a folder, and a list of their sums, so that
it can be read without this program.

The form is that of BagIt (RFC 8493): `bagit.txt`, `data/…`, `manifest-sha256.txt`.
"""

from __future__ import annotations

import hashlib
import os
import zipfile
from collections.abc import Callable
from pathlib import Path

from jobsheet.errors import CannotWrite, NoSuchEntry

_BAGIT = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
#: A file of one moment for ever, so that the same shelf gives the same archive.
_DAY = (1980, 1, 1, 0, 0, 0)


def export_shelf(shelf: Path, target: Path, told: Callable[[int], None] | None = None) -> int:
    """Everything in the folder but hidden files, with its sum; how many files. Raises CannotWrite."""
    beside = target.with_name(f".{target.name}.new")
    sums: list[str] = []
    try:
        with zipfile.ZipFile(beside, "w", zipfile.ZIP_DEFLATED) as archive:
            _put(archive, "bagit.txt", _BAGIT.encode())
            for count, path in enumerate(_all_files(shelf, (target, beside)), 1):
                raw = (shelf / path).read_bytes()
                sums.append(f"{hashlib.sha256(raw).hexdigest()}  data/{path}\n")
                _put(archive, f"data/{path}", raw)
                if told is not None:
                    told(count)
            _put(archive, "manifest-sha256.txt", "".join(sums).encode())
        beside.replace(target)
    except OSError as error:
        beside.unlink(missing_ok=True)
        raise CannotWrite(
            f"{target.name} cannot be written: {error.strerror or error}. Choose another place."
        ) from None
    return len(sums)


def _all_files(shelf: Path, but: tuple[Path, ...]) -> list[str]:
    others = {path.resolve() for path in but}
    files = []
    for folder, folders, names in os.walk(shelf):
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        for name in sorted(names):
            path = Path(folder) / name
            if not name.startswith(".") and path.is_file() and path.resolve() not in others:
                files.append(path.relative_to(shelf).as_posix())
    return sorted(files)


def _put(archive: zipfile.ZipFile, name: str, raw: bytes) -> None:
    entry = zipfile.ZipInfo(name, _DAY)
    entry.compress_type = zipfile.ZIP_DEFLATED
    archive.writestr(entry, raw)


def sums_are_right(archive: Path) -> tuple[str, ...]:
    """The names whose content is not what the list says; empty where all is well. Raises
    NoSuchEntry where it is no archive of ours.
    """
    try:
        return _wrong_sums(archive)
    except (OSError, zipfile.BadZipFile, KeyError, UnicodeDecodeError, ValueError):
        raise NoSuchEntry(f"{archive.name} is no archive of a shelf, or it is damaged") from None


def _wrong_sums(archive: Path) -> tuple[str, ...]:
    wrong = []
    with zipfile.ZipFile(archive) as opened:
        for line in opened.read("manifest-sha256.txt").decode("utf-8").splitlines():
            there, _, name = line.partition("  ")
            try:
                if hashlib.sha256(opened.read(name)).hexdigest() != there:
                    wrong.append(name)
            except KeyError:
                wrong.append(name)
    return tuple(wrong)
