"""The sheets made beside the interface's thread: the newest question is answered, what was asked before it is dropped."""

from __future__ import annotations

import atexit
import sys
import threading
from collections.abc import Callable
from queue import Empty, SimpleQueue

from msgspec import Struct
from PySide6.QtCore import QObject, QTimer

from jobsheet.gui.desk.job_pdf import MadeSheets
from jobsheet.gui.desk.stage_work import LOOK, SWITCH
from jobsheet.model.not_checked import alone

#: The thread never touches the toolkit: it puts its answer into a queue, or the sentence that says why there is none.
Answer = MadeSheets | str


class _Question(Struct):
    """Pages that somebody waits for; what is no longer wanted when its turn comes is not made."""

    make: Callable[[], MadeSheets]
    answers: SimpleQueue[Answer]
    wanted: bool = True


class _Maker:
    """The one thread of all print places: windows that are opened and closed leave no threads behind that still make pages."""

    def __init__(self) -> None:
        self._asked: SimpleQueue[_Question | None] = SimpleQueue()
        self._thread: threading.Thread | None = None

    def ask(self, question: _Question) -> None:
        """Make it when what is being made is done."""
        if self._thread is None:
            self._thread = threading.Thread(target=self._run, name="pages", daemon=True)
            # The modeller complains at the end of the program about solids that a thread still holds.
            atexit.register(self._end)
            self._thread.start()
        self._asked.put(question)

    def _run(self) -> None:
        while (question := self._asked.get()) is not None:
            if question.wanted:
                question.answers.put(alone(question.make, _why_none))
            del question  # nothing of a plan stays while nobody asks

    def _end(self) -> None:
        self._asked.put(None)
        if self._thread is not None:
            self._thread.join(5)


_MAKER = _Maker()


class PagesWork:
    """Between the print place and the thread: one set of pages is made at a time."""

    def __init__(self, parent: QObject, arrived: Callable[[Answer], None]) -> None:
        self._arrived = arrived
        self._answers: SimpleQueue[Answer] = SimpleQueue()
        self._next: Callable[[], MadeSheets] | None = None
        self._question: _Question | None = None
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
        self._question, self._next = _Question(self._next, self._answers), None
        # The window takes the interpreter back many times while it paints: each time it waits so long.
        sys.setswitchinterval(SWITCH)
        _MAKER.ask(self._question)


def _why_none(why: str) -> Answer:
    return why
