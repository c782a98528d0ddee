"""Asks for the answers to the open step, one part at a time, when the hand has rested: the figures always come first."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer

from jobsheet.errors import JobsheetError
from jobsheet.reckoning.answers.all_answers import Answers, answers_in_parts

if TYPE_CHECKING:
    from jobsheet.gui.window.window import Window

#: How long the hand rests before anything is asked, and between two parts [ms].
REST, BETWEEN = 160, 1


class Answering(QObject):
    """Holds the question that is being answered; another edit or another row begins anew."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window
        self._about: tuple[str, int] | None = None
        self._parts: Iterator[Answers] | None = None
        self._found = Answers()
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._next)

    @property
    def done(self) -> bool:
        """Whether the open row has all of its answers."""
        return self._parts is None and not self._timer.isActive()

    def ask(self) -> None:
        """The row that is open, or its figures, are others now."""
        row, reckoned = self._window.open_row, self._window.desk.reckoned
        if row is None or reckoned is None:
            self._timer.stop()
            self._parts, self._about = None, None
            return
        about = (row.key, id(reckoned))
        if about == self._about:
            row.answer(self._found, self._window.desk)
            return
        self._about = about
        set_up, operation = self._window.desk.job.find(row.key)
        # The reckoned value is held by the generator, so that its identity stays its own.
        self._parts = answers_in_parts(set_up, operation, reckoned)
        self._timer.start(REST)

    def _next(self) -> None:
        row = self._window.open_row
        if self._parts is None or row is None or self._about is None or row.key != self._about[0]:
            return
        try:
            self._found = next(self._parts)
        except StopIteration:
            self._parts = None
            return
        except JobsheetError:
            # What cannot be answered leaves its place empty; the figures say for themselves what is wrong.
            self._parts = None
            return
        if row.answer(self._found, self._window.desk):
            self._window.bench.column.ruled.arrange()
        if self._found.whole:
            self._parts = None
        else:
            self._timer.start(BETWEEN)
