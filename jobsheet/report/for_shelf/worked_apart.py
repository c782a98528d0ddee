"""Works out what the shelf shows of its jobs, in a process of its own and in idle time:
`python -m jobsheet.report.for_shelf.worked_apart FOLDER`.

It is told on its input which contents are in sight, a line at a time; these come first. It tells each content
that is done, and ends with its input, so that it never outlives the window.
"""

from __future__ import annotations

import contextlib
import os
import sys
import threading
from pathlib import Path

from jobsheet.report.for_shelf.worked_out import worked_out
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.worked_kept import keep, to_work


def main(folder: str) -> None:
    """Work what is not worked yet, what is in sight first; as nice as can be,
    for somebody works beside it.
    """
    with contextlib.suppress(AttributeError, OSError):
        os.nice(19)
    sight = _Sight()
    index = Index(Path(folder), look=False)
    try:
        left = to_work(index)
        while left and not sight.over:
            content = next((content for content in sight.contents if content in left), None) or next(
                iter(left)
            )
            worked = worked_out(index.shelf / left.pop(content), content)
            if worked is not None:
                keep(index, worked)
                sys.stdout.buffer.write(f"{content}\n".encode())
                sys.stdout.buffer.flush()
    finally:
        index.close()


class _Sight:
    """What is in sight, as it is told."""

    def __init__(self) -> None:
        self.contents: tuple[str, ...] = ()
        self.over = False
        threading.Thread(target=self._listen, daemon=True).start()

    def _listen(self) -> None:
        """Line by line, past Python's own reader: it would be held at the end of the program."""
        said = b""
        while data := os.read(0, 65536):
            *lines, said = (said + data).split(b"\n")
            if lines:
                self.contents = tuple(lines[-1].decode(errors="replace").split())
        self.over = True


if __name__ == "__main__":
    main(sys.argv[1])
