"""Has verdicts and pictures of the shelf's jobs worked in idle time, in a process of
its own that ends with the window.
"""

from __future__ import annotations

import contextlib
import subprocess
import sys
import threading
from collections.abc import Iterable

from PySide6.QtCore import QObject, QTimer, Signal

from jobsheet.gui.desk.aside.voice import voice
from jobsheet.gui.places.shelf.found_row import ROOM
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.worked_kept import Worked, worked_of

#: The hand rests so long before anything is worked [ms].
IDLE = 800
#: What came meanwhile is shown together, no oftener than this [ms].
TOGETHER = 250


class Working(QObject):
    """One shelf's work. `done` is told where something is there that was not; nothing is
    told where no process can be begun.
    """

    done = Signal()

    def __init__(self, index: Index, parent: QObject) -> None:
        super().__init__(parent)
        self._index = index
        #: What was asked for lately, by its content.
        self._known: dict[str, Worked] = {}
        self._process: subprocess.Popen[bytes] | None = None
        self._sight = ""
        self._wanted = False
        self._begin = QTimer(self)
        self._begin.setSingleShot(True)
        self._begin.setInterval(IDLE)
        self._begin.timeout.connect(self._start)
        self._tell = QTimer(self)
        self._tell.setSingleShot(True)
        self._tell.setInterval(TOGETHER)
        self._tell.timeout.connect(self.done)
        self._voice = voice()

    def of(self, content: str) -> Worked | None:
        """Verdict and picture of a file with that content; None where they are still to come."""
        worked = self._known.get(content) or worked_of(self._index, content)
        if worked is not None:
            if len(self._known) >= ROOM:
                self._known.clear()
            self._known[content] = worked
        return worked

    def when_idle(self) -> None:
        """Begin once the hand has rested; what works already goes on."""
        if not self._wanted:
            self._begin.start()

    def sight(self, contents: Iterable[str]) -> None:
        """These are in sight: they come first."""
        self._sight = " ".join(contents)
        self._say()

    def stop(self) -> None:
        """Come to an end; what was worked is kept."""
        self._wanted = False
        self._begin.stop()
        if self._process is not None:
            with contextlib.suppress(OSError):
                self._process.kill()

    def _start(self) -> None:
        self._wanted = True
        threading.Thread(target=self._work, daemon=True).start()

    def _work(self) -> None:
        """The process and what it tells; the window waits for neither."""
        with contextlib.suppress(OSError):
            process = subprocess.Popen(  # noqa: S603 - ourselves, and the folder is no more than its argument
                [sys.executable, "-m", "jobsheet.report.for_shelf.worked_apart", str(self._index.shelf)],
                stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
                creationflags=getattr(subprocess, "CREATE_NO_WINDOW", 0),
            )  # fmt: skip
            self._process = process
            if not self._wanted:  # the window was quicker
                process.kill()
            self._say()
            self._listen(process)

    def _say(self) -> None:
        if self._process is None or self._process.stdin is None:
            return
        with contextlib.suppress(OSError, ValueError):  # it has ended
            self._process.stdin.write(f"{self._sight}\n".encode())
            self._process.stdin.flush()

    def _listen(self, process: subprocess.Popen[bytes]) -> None:
        assert process.stdout is not None
        with process.stdout as lines:
            for _ in lines:
                self._voice.told.emit(self._soon)
        if process.stdin is not None:
            with contextlib.suppress(OSError):
                process.stdin.close()
        process.wait()

    def _soon(self) -> None:
        if not self._tell.isActive():
            self._tell.start()
