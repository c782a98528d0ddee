"""One writer at a time to a proof log; what a crash leaves locked the system gives back."""

from __future__ import annotations

import os
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from jobsheet.errors import CannotWrite

#: So long another program is waited for before it is said that it writes [s].
PATIENCE = 5.0


@contextmanager
def alone(path: Path) -> Iterator[None]:
    """While this holds no other program of ours writes to that log; given
    back by the system after a crash.
    """
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle = os.open(path.with_suffix(".lock"), os.O_RDWR | os.O_CREAT, 0o666)
    except OSError as error:
        raise CannotWrite(f"{path.name} cannot be written: {error.strerror or error}.") from None
    try:
        end = time.monotonic() + PATIENCE
        while not _locked(handle):
            if time.monotonic() > end:
                raise CannotWrite(f"Another program is writing to {path.name}: try again in a moment.")
            time.sleep(0.02)
        yield
    finally:
        os.close(handle)


def _locked(handle: int) -> bool:
    """Take the lock if nobody has it; closing the handle gives it back."""
    try:
        if os.name == "nt":
            import msvcrt

            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)  # type: ignore[attr-defined,unused-ignore]
        else:
            import fcntl

            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True
