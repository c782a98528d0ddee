"""One program of ours at a time writes a file, between looking at what stands there and putting the new one in its place.

The lock is a courtesy that the system gives back after a crash, so that a dead one blocks nobody; what guards the file is that it is
compared with what was read. Where a share knows no locks a file with a name and a time stands for one (`lock_file.py`).
"""

from __future__ import annotations

import contextlib
import errno
import os
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from jobsheet.errors import CannotWrite
from jobsheet.storage.locks.lock_file import LockFile

#: So long another program is waited for before it is said that it writes [s]; a
#: save takes a twentieth of one.
PATIENCE = 5.0
#: Said where somebody else has the lock; anything else says that there are no locks here.
_TAKEN = (errno.EWOULDBLOCK, errno.EAGAIN, errno.EACCES, errno.EDEADLK)


def lock_of(path: Path) -> Path:
    """The hidden file beside a file by which its writers know of each other; it is there only while somebody writes."""
    return path.with_name(f".{path.name[:200]}.lock")


@contextmanager
def one_writer(path: Path) -> Iterator[None]:
    """While this holds, no other program of ours writes that file. Raises CannotWrite where another one goes on writing."""
    lock = lock_of(path)
    end = time.monotonic() + PATIENCE
    handle: int | None = None
    stands: LockFile | None = None
    while True:
        try:
            handle = os.open(lock, os.O_RDWR | os.O_CREAT, 0o666)
        except OSError:
            break  # no place for a lock: what is wrong with it is said by who writes the file
        ours = _is_ours(handle, lock)
        if ours is None:
            stands = stands or LockFile(lock.with_suffix(".writing"))
            ours = stands.taken()
        if ours:
            break
        os.close(handle)
        handle = None
        if time.monotonic() > end:
            who = stands.whose() if stands is not None else "Somebody else"
            raise CannotWrite(
                f"{who} is writing {path.name} at this moment: save again in a moment; what you typed is kept."
            )
        time.sleep(0.01)
    try:
        yield
    finally:
        if handle is not None:
            with contextlib.suppress(OSError):
                lock.unlink()  # before it is given back: who waited for it looks for the new one
            os.close(handle)
            if stands is not None:
                stands.give_back()


def _is_ours(handle: int, lock: Path) -> bool | None:
    """Take the lock if nobody has it, and if the file by that name still is the one that was opened; None where there are no locks."""
    try:
        if os.name == "nt":
            import msvcrt

            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined,unused-ignore]
            return True
        import fcntl

        fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as error:
        return False if error.errno in _TAKEN else None
    try:
        return os.fstat(handle).st_ino == lock.stat().st_ino
    except OSError:
        return False
