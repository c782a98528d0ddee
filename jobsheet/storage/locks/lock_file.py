"""A lock where a file system has none: a file that says who writes, on which computer and
since when; a dead one blocks nobody.

A file of one's own is linked to the name of the lock, which only one can do, on old shares too (open(2),
on O_EXCL). It is dead where its program has ended, on this computer, or where it is older than any save
takes by the clock of the share itself.
"""

from __future__ import annotations

import contextlib
import os
from itertools import count
from pathlib import Path

from jobsheet import clock
from jobsheet.storage.locks.who_writes import computer, has_ended, person

#: A lock that is older is of a program that has ended [s]: a save takes a twentieth of one (estimate).
DEAD = 60.0
_NUMBERS = count(1)


class LockFile:
    """One lock by its name; taken as often as it is asked for, until it is ours."""

    def __init__(self, path: Path) -> None:
        self._path = path
        self._own = path.with_name(f"{path.name}.{computer()}.{os.getpid()}.{next(_NUMBERS)}")

    def taken(self) -> bool:
        """Whether it is ours now. Where no file can be made there is no lock, and it counts as ours."""
        try:
            self._own.write_text(
                f"{person()}\n{computer()}\n{os.getpid()}\n{clock.now():%H:%M}\n",
                encoding="utf-8",
            )
        except OSError:
            return True
        try:
            if self._linked():
                return True
            self._bury()
            return self._linked()
        finally:
            with contextlib.suppress(OSError):
                self._own.unlink()

    def whose(self) -> str:
        """`B on bench-2 (since 14:03)`; `Somebody else` where it does not say."""
        said = self._said()
        return f"{said[0]} on {said[1]} (since {said[3]})" if len(said) == 4 else "Somebody else"

    def give_back(self) -> None:
        """It is free, unless somebody took it for dead meanwhile."""
        if self._said()[1:3] == [computer(), str(os.getpid())]:
            with contextlib.suppress(OSError):
                self._path.unlink()

    def _said(self) -> list[str]:
        try:
            return self._path.read_text(encoding="utf-8", errors="replace").splitlines()
        except OSError:
            return []

    def _linked(self) -> bool:
        try:
            os.link(self._own, self._path)
        except FileExistsError:
            return False
        except (OSError, AttributeError):
            return self._made()  # no links here either
        return True

    def _made(self) -> bool:
        try:
            with self._path.open("xb") as file:
                file.write(self._own.read_bytes())
        except OSError:
            return False
        return True

    def _bury(self) -> None:
        """Put a dead lock out of the way, in one move, so that of two who find it dead one does."""
        dead = self._own.with_name(f"{self._own.name}.dead")
        try:
            seen = self._path.stat()
            if not (has_ended(self._said()) or self._own.stat().st_mtime - seen.st_mtime > DEAD):
                return
            self._path.rename(dead)
            if not os.path.samestat(seen, dead.stat()):  # somebody had buried it, and this is the next one
                with contextlib.suppress(OSError):
                    os.link(dead, self._path)
            dead.unlink()
        except OSError:
            return
