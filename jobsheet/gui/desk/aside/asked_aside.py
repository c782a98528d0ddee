"""Something is asked of a disk that may be slow or gone: in a thread of its own, so that the
window goes on, and is told later.

The thread is a plain one that ends with the program: nobody has to wait for a share that never answers.
"""

from __future__ import annotations

import threading
from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.aside.voice import voice

#: A disk that answers within this is waited for, and nobody sees that it was asked
#: aside [s]; below what a hand feels.
AT_ONCE = 0.015
#: A share that is silent for so long is shown as away [ms] (lessons-and-shelf section 7).
SILENT = 2000


class Aside(QObject):
    """One question. `done` is told in the window's thread; `answer` is what came, or the error."""

    done = Signal()

    def __init__(self, parent: QObject, question: Callable[[], object]) -> None:
        super().__init__(parent)
        self.answer: object = None
        self.over = False
        self._there = threading.Event()
        self._voice = voice()
        self._question = question
        threading.Thread(target=self._run, daemon=True).start()

    def _run(self) -> None:
        try:
            self.answer = self._question()
        except (JobsheetError, OSError, ValueError, RuntimeError) as error:
            self.answer = error
        self.over = True
        self._there.set()
        self._voice.told.emit(self._tell)

    def _tell(self) -> None:
        self.done.emit()

    def at_once(self) -> bool:
        """Whether the answer is there already, or comes within a moment."""
        return self._there.wait(AT_ONCE)
