"""The sheets made beside the interface's thread: the newest question is answered,
what was asked before it is dropped.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from queue import Empty, SimpleQueue

from PySide6.QtCore import QObject, QTimer

from jobsheet.gui.desk.job_pdf import MadeSheets
from jobsheet.gui.desk.stage_work import LOOK, SWITCH
from jobsheet.gui.pages.pages_maker import MAKER, Answer, Question


class PagesWork:
    """Between the print place and the thread: one set of pages is made at a time."""

    def __init__(self, parent: QObject, arrived: Callable[[Answer], None]) -> None:
        self._arrived = arrived
        self._answers: SimpleQueue[Answer] = SimpleQueue()
        self._next: Callable[[], MadeSheets] | None = None
        self._question: Question | None = None
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
        if self._question is None:
            self._begin()
        self._timer.start()

    def look(self) -> None:
        """Hand over what is ready, unless something newer was asked."""
        try:
            answer = self._answers.get_nowait()
        except Empty:
            return
        self._question = None
        if self._next is not None:
            self._begin()
            return
        self._timer.stop()
        self._arrived(answer)

    def halt(self) -> None:
        """Nobody looks at the pages any more."""
        self._next = None
        self._timer.stop()
        if self._question is not None:
            self._question.wanted = False
            self._question = None

    def _begin(self) -> None:
        if self._next is None:
            return
        self._question, self._next = Question(self._next, self._answers), None
        # The window takes the interpreter back many times while it paints: each time it waits so long.
        sys.setswitchinterval(SWITCH)
        MAKER.ask(self._question)
