"""Reads what has changed on the shelf beside the window, which goes on: in a
process of its own, else in a thread.

Neither is waited for: a share that never answers holds nobody up.
"""

from __future__ import annotations

import contextlib
import subprocess
import sys
import threading
import time
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, Signal

from jobsheet.errors import JobsheetError, as_sentence
from jobsheet.gui.desk.aside.voice import voice
from jobsheet.shelf.read_apart import ALIVE, BREATH, DONE, WENT
from jobsheet.shelf.shelf_index import Index, Read

#: Whether a process may be begun; a thread reads where none can be.
APART = True


class Reading(QObject):
    """One look at a folder: `went` as it goes, `alive` where the disk answers, `done` at the end with a
    sentence where it could not be read.
    """

    went = Signal(int, int)
    alive = Signal()
    done = Signal(str)

    def __init__(self, folder: Path, parent: QObject) -> None:
        super().__init__(parent)
        self._folder = folder
        self._wanted = True
        self._heard = 0.0
        self._voice = voice()
        self._process: subprocess.Popen[bytes] | None = None
        self.over = False

    def start(self) -> None:
        """Begin."""
        threading.Thread(target=self._run, args=(APART,), daemon=True).start()

    def _begin(self) -> None:
        """The process; the window does not wait for that either."""
        with contextlib.suppress(OSError):
            self._process = subprocess.Popen(  # noqa: S603 - ourselves, and the folder is no more than its argument
                [sys.executable, "-m", "jobsheet.shelf.read_apart", str(self._folder)],
                stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
                creationflags=getattr(subprocess, "CREATE_NO_WINDOW", 0),
            )  # fmt: skip
        if not self._wanted:
            self.stop()

    def stop(self) -> None:
        """Come to an end; what was read so far stays found."""
        self._wanted = False
        if self._process is not None:
            with contextlib.suppress(OSError):
                self._process.kill()

    def _run(self, apart: bool) -> None:
        if apart:
            self._begin()
        problem = self._listen(self._process) if self._process is not None else None
        if problem is None and self._wanted:  # no process, or one that could not even begin
            problem = self._read()
        self.over = True
        self._voice.told.emit(partial(self._tell, "done", as_sentence(problem) if problem else ""))

    def _tell(self, name: str, *values: object) -> None:
        """Told in the window's thread."""
        getattr(self, name).emit(*values)

    def _listen(self, process: subprocess.Popen[bytes]) -> str | None:
        """Pass on what the process tells; what it said at its end, None where it ended without a word."""
        said: str | None = None
        assert process.stdout is not None
        with process.stdout as lines:
            for line in lines:
                word, _, rest = line.decode(errors="replace").strip().partition(" ")
                with contextlib.suppress(ValueError):
                    if word == ALIVE:
                        self._voice.told.emit(partial(self._tell, "alive"))
                    elif word == WENT:
                        looked, of = rest.split()
                        self._voice.told.emit(partial(self._tell, "went", int(looked), int(of)))
                if word == DONE:
                    said = rest
        process.wait()
        return said

    def _read(self) -> str:
        """In this thread, with an index of its own, for one belongs to one thread."""
        try:
            index = Index(self._folder)
            try:
                index.refresh(self._told, self._alive)
            finally:
                index.close()
        except JobsheetError as error:
            return str(error)
        return ""

    def _alive(self) -> bool:
        if time.monotonic() - self._heard > BREATH:
            self._heard = time.monotonic()
            self._voice.told.emit(partial(self._tell, "alive"))
        return self._wanted

    def _told(self, read: Read) -> bool:
        self._voice.told.emit(partial(self._tell, "went", read.looked, read.of))
        return self._wanted
