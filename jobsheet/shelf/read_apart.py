"""Reads a shelf in a process of its own, for the window: `python -m jobsheet.shelf.read_apart FOLDER`,
a line for each thing that is told.

A thread would do, but whoever reads ten thousand files keeps the interpreter busy, and each
look of the window into the index would wait for it. A process can be ended at any moment too,
also while a share does not answer.
"""

from __future__ import annotations

import contextlib
import os
import sys
import time
from pathlib import Path

from jobsheet.errors import JobsheetError

#: That the disk answers is told no oftener than this [s]: the window has other things to do.
BREATH = 0.3
ALIVE, WENT, DONE = "alive", "went", "done"


def main(folder: str) -> None:
    """Read it, and tell how it goes: `alive`, `went 200 10000`, at the end `done` with a
    sentence where it could not be read.
    """
    from jobsheet.shelf.shelf_index import Index, Read

    heard = 0.0
    with contextlib.suppress(AttributeError, OSError):
        os.nice(5)  # the window goes first

    def alive() -> bool:
        nonlocal heard
        if time.monotonic() - heard > BREATH:
            heard = time.monotonic()
            _tell(ALIVE)
        return True

    def told(read: Read) -> bool:
        _tell(f"{WENT} {read.looked} {read.of}")
        return True

    problem = ""
    try:
        index = Index(Path(folder))
        try:
            index.refresh(told, alive)
        finally:
            index.close()
    except JobsheetError as error:
        problem = " ".join(str(error).split())
    _tell(f"{DONE} {problem}")


def _tell(words: str) -> None:
    sys.stdout.buffer.write(f"{words}\n".encode())
    sys.stdout.buffer.flush()


if __name__ == "__main__":
    main(sys.argv[1])
