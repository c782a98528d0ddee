"""One job, one window: a lock in the person's own folder says that a window has a job's file open.

The lock goes with the program that holds it, also when that ends without a word.
"""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QLockFile

from jobsheet import paths
from jobsheet.storage.disk import digest


class Claim:
    """The hold of one window on the file of its job."""

    def __init__(self) -> None:
        self._lock: QLockFile | None = None
        self._path: Path | None = None

    def take(self, path: Path | None) -> bool:
        """Let the old file go and claim this one; whether no other window has
        it. Nothing to claim is nobody's.
        """
        if path == self._path:
            return self._lock is not None or path is None
        self.let_go()
        self._path = path
        if path is None:
            return True
        folder = paths.own_folder() / "open"
        try:
            folder.mkdir(parents=True, exist_ok=True)
            name = digest(str(path.resolve()))
        except (OSError, ValueError):
            return True
        lock = QLockFile(str(folder / f"{name}.lock"))
        lock.setStaleLockTime(0)
        if lock.tryLock(0):
            self._lock = lock
            return True
        return lock.error() != QLockFile.LockError.LockFailedError

    def let_go(self) -> None:
        """The file is free again."""
        if self._lock is not None:
            self._lock.unlock()
        self._lock = self._path = None
