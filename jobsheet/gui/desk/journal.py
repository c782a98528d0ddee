"""The crash journal: what was not saved, kept in the person's own folder until it is saved or thrown away.

One file for each running window, locked while that window lives; a file without a living owner is what a
crash or a power cut left behind.
"""

from __future__ import annotations

import os
from pathlib import Path

import msgspec
from PySide6 import QtCore

from jobsheet import paths

SUFFIX = ".json"
#: A journal holds a job and its drafts; more is none (common sense, no source) [bytes].
LARGEST = 20_000_000


class Entry(msgspec.Struct, frozen=True):
    """What one window had on its desk: the job as its file would be, half-typed texts, the file's place."""

    job: str
    drafts: tuple[tuple[str, str, str], ...] = ()
    path: str = ""
    name: str = ""
    digest: str = ""


def folder() -> Path:
    """Where the journals lie."""
    return paths.own_folder() / "journal"


class Journal:
    """The journal of this window."""

    def __init__(self) -> None:
        self._path = folder() / f"{os.getpid()}-{id(self):x}{SUFFIX}"
        self._lock: QtCore.QLockFile | None = None

    def write(self, entry: Entry) -> bool:
        """Keep an entry; whether that was possible. The folder is made when something is first kept."""
        if self._lock is None:
            try:
                self._path.parent.mkdir(parents=True, exist_ok=True)
            except OSError:
                return False
            self._lock = QtCore.QLockFile(str(self._path.with_suffix(".lock")))
            self._lock.setStaleLockTime(0)
            self._lock.tryLock(0)
        file = QtCore.QSaveFile(str(self._path))
        if not file.open(QtCore.QSaveFile.OpenModeFlag.WriteOnly):
            return False
        file.write(msgspec.json.encode(entry))
        return bool(file.commit())

    def clear(self) -> None:
        """Nothing is unsaved any more."""
        self._path.unlink(missing_ok=True)
        if self._lock is not None:
            self._lock.unlock()
            self._lock = None


def left_behind() -> list[tuple[Path, Entry]]:
    """Entries whose window is gone, the newest first; files that cannot be read are left alone."""
    journals: list[tuple[float, Path, Entry]] = []
    if not folder().is_dir():
        return []
    for path in folder().glob(f"*{SUFFIX}"):
        lock = QtCore.QLockFile(str(path.with_suffix(".lock")))
        lock.setStaleLockTime(0)
        if not lock.tryLock(0):
            continue
        lock.unlock()
        try:
            if paths.no_file(path) or path.stat().st_size > LARGEST:
                continue
            entry = msgspec.json.decode(path.read_bytes(), type=Entry)
            journals.append((path.stat().st_mtime, path, entry))
        except (OSError, msgspec.DecodeError, UnicodeDecodeError):
            continue
    return [(path, entry) for _, path, entry in sorted(journals, key=lambda item: -item[0])]
