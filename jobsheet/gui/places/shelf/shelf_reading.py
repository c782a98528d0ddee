"""Reads what has changed on the shelf beside the window, which goes on; with an index of its own, for one belongs to one thread."""

from __future__ import annotations

import contextlib
import threading
import time
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from jobsheet.errors import JobsheetError
from jobsheet.shelf.shelf_index import Index, Read

#: That the disk answers is told no oftener than this [s]: the window has other things to do.
BREATH = 0.3


class Reading(QObject):
    """One look at a folder: `went` as it goes, `alive` where the disk answers, `done` at the end with a sentence where it could not be read.

    Its thread ends with the program: a share that never answers holds nobody up.
    """

    went = Signal(int, int)
    alive = Signal()
    done = Signal(str)

    def __init__(self, folder: Path, parent: QObject) -> None:
        super().__init__(parent)
        self._folder = folder
        self._wanted = True
        self.over = False
        self._heard = 0.0

    def start(self) -> None:
        """Begin."""
        threading.Thread(target=self._run, daemon=True).start()

    def stop(self) -> None:
        """Come to an end soon; what was read so far stays found. It is not waited for: the disk may never answer."""
        self._wanted = False

    def _run(self) -> None:
        problem = ""
        try:
            index = Index(self._folder)
            try:
                index.refresh(self._told, self._alive)
            finally:
                index.close()
        except JobsheetError as error:
            words = str(error)
            problem = f"{words[:1].upper()}{words[1:]}".rstrip(".") + "."
        self.over = True
        with contextlib.suppress(RuntimeError):  # the window is gone
            self.done.emit(problem)

    def _alive(self) -> bool:
        if time.monotonic() - self._heard > BREATH:
            self._heard = time.monotonic()
            with contextlib.suppress(RuntimeError):
                self.alive.emit()
        return self._wanted

    def _told(self, read: Read) -> bool:
        with contextlib.suppress(RuntimeError):
            self.went.emit(read.looked, read.of)
        return self._wanted
