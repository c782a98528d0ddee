"""The sheets made beside the interface's thread: the newest question is answered, what was asked before it is dropped."""

from __future__ import annotations

import atexit
import sys
import threading
from collections.abc import Callable
from queue import Empty, SimpleQueue

from PySide6.QtCore import QObject, QTimer

from jobsheet.gui.desk.job_pdf import MadeSheets
from jobsheet.gui.desk.stage_work import LOOK, SWITCH
from jobsheet.model.not_checked import alone

#: The thread never touches the toolkit: it puts its answer into a queue, or the sentence that says why there is none.
Answer = MadeSheets | str


class PagesWork:
    """Between the print place and the thread: one set of pages is made at a time."""

    def __init__(self, parent: QObject, arrived: Callable[[Answer], None]) -> None:
        self._arrived = arrived
        self._answers: SimpleQueue[Answer] = SimpleQueue()
        self._next: Callable[[], MadeSheets] | None = None
        self._busy = False
        self._timer = QTimer(parent)
        self._timer.setInterval(LOOK)
        self._timer.timeout.connect(self.look)

    @property
    def waiting(self) -> bool:
        """Whether something that was asked is not answered yet."""
        return self._timer.isActive()

    def ask(self, make: Callable[[], MadeSheets]) -> None:
        """Make these pages in place of what was asked before."""
        self._next = make
        if not self._busy:
            self._begin()
        self._timer.start()

    def look(self) -> None:
        """Hand over what is ready, unless something newer was asked."""
        try:
            answer = self._answers.get_nowait()
        except Empty:
            return
        self._busy = False
        if self._next is not None:
            self._begin()
            return
        self._timer.stop()
        self._arrived(answer)

    def halt(self) -> None:
        """Nobody looks at the pages any more."""
        self._next = None
        self._timer.stop()

    def _begin(self) -> None:
        make, self._next, self._busy = self._next, None, True
        # The window takes the interpreter back many times while it paints: each time it waits so long.
        sys.setswitchinterval(SWITCH)
        thread = threading.Thread(target=self._run, args=(make,), name="pages", daemon=True)
        # The modeller complains at the end of the program about solids that a thread still holds.
        atexit.register(thread.join, 5)
        thread.start()

    def _run(self, make: Callable[[], MadeSheets]) -> None:
        self._answers.put(alone(make, _why_none))


def _why_none(why: str) -> Answer:
    return why
