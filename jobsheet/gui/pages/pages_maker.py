"""The thread in which pages are made, beside the interface's own."""

from __future__ import annotations

import atexit
import threading
from collections.abc import Callable
from queue import SimpleQueue

from msgspec import Struct

from jobsheet.gui.desk.job_pdf import MadeSheets
from jobsheet.model.not_checked import alone

#: The thread never touches the toolkit: it puts its answer into a queue, or the
#: sentence that says why there is none.
Answer = MadeSheets | str


class Question(Struct):
    """Pages that somebody waits for; what is no longer wanted when its turn comes is not made."""

    make: Callable[[], MadeSheets]
    answers: SimpleQueue[Answer]
    wanted: bool = True


class Maker:
    """The one thread of all print places: windows that are opened and closed leave no
    threads behind that still make pages.
    """

    def __init__(self) -> None:
        self._asked: SimpleQueue[Question | None] = SimpleQueue()
        self._thread: threading.Thread | None = None
        self._warm = False

    def warm(self, make: Callable[[], MadeSheets]) -> None:
        """Make pages that nobody asked for, once: what the first pages of a day wait for (makers of pages, fonts,
        pictures) is there when somebody asks.
        """
        if not self._warm:
            self._warm = True
            self.ask(Question(make, SimpleQueue()))

    def ask(self, question: Question) -> None:
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


MAKER = Maker()


def _why_none(why: str) -> Answer:
    return why
