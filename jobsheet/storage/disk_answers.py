"""Whether the disk that a file lies on answers: asked aside, for a share that is silent would hold the
window up for as long as it likes.
"""

from __future__ import annotations

import contextlib
import threading
from pathlib import Path

#: A disk that is well answers within this, and nobody sees that it was asked [s].
AT_ONCE = 0.04
#: A share that is silent for so long is away [s] (lessons-and-shelf section 7).
SILENT = 2.0


class DiskAnswers:
    """One question at a time: a disk that did not answer yet is not asked again."""

    def __init__(self) -> None:
        self._asked: threading.Event | None = None

    def within(self, file: Path, seconds: float) -> bool:
        """Whether the folder of that file answers in so many seconds; that it
        is not there is an answer too.
        """
        if self._asked is None or self._asked.is_set():
            self._asked = threading.Event()
            threading.Thread(target=_ask, args=(file.parent, self._asked), daemon=True).start()
        return self._asked.wait(seconds)


def _ask(folder: Path, answered: threading.Event) -> None:
    with contextlib.suppress(OSError, ValueError):
        folder.stat()
    answered.set()
