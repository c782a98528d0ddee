"""Asks for the answers to the open step, one part at a time, when the hand has
rested: the figures always come first.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from PySide6.QtCore import QObject, QTimer

from jobsheet.errors import JobsheetError
from jobsheet.gui.column.open_row import OpenRow
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.problems_log import keep
from jobsheet.reckoning.answers.all_answers import Answers, answers_in_parts

#: How long the hand rests before anything is asked, and between two parts [ms].
REST, BETWEEN = 160, 1


class Answering(QObject):
    """Holds the question that is being answered; another edit or another row begins anew."""

    def __init__(self, desk: Desk, row: Callable[[], OpenRow | None], changed: Callable[[], None]) -> None:
        super().__init__(desk)
        self._desk = desk
        self._row = row
        self._changed = changed
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

    def wait(self) -> None:
        """Somebody types: nothing more is asked until the text is meant."""
        self._timer.stop()
        self._parts, self._about = None, None

    def ask(self) -> None:
        """The row that is open, or its figures, are others now."""
        row, reckoned = self._row(), self._desk.reckoned
        if row is None or reckoned is None:
            self._timer.stop()
            self._parts, self._about = None, None
            return
        if self._desk.left_unread(row.key):  # no answer to a question that cannot be read
            self.wait()
            self._found = Answers()
            self._hand_over(row)
            self._changed()
            return
        about = (row.key, id(reckoned))
        if about == self._about:
            self._hand_over(row)
            return
        if self._about is None or self._about[0] != row.key:
            self._found = Answers()  # another row's answers are none of this one's, also until its own come
        self._about = about
        set_up, operation = self._desk.job.find(row.key)
        # The reckoned value is held by the generator, so that its identity stays its own.
        self._parts = answers_in_parts(set_up, operation, reckoned)
        self._timer.start(REST)

    def _next(self) -> None:
        row = self._row()
        if self._parts is None or row is None or self._about is None or row.key != self._about[0]:
            return
        try:
            self._found = next(self._parts)
        except StopIteration:
            self._parts = None
            return
        except Exception as error:  # noqa: BLE001  the figures say for themselves what is wrong
            # What cannot be answered leaves its place empty; that no card or
            # table has it is nothing for the log.
            if not isinstance(error, JobsheetError):
                keep(error)
            self._parts = None
            return
        if self._hand_over(row):
            self._changed()
        if self._found.whole:
            self._parts = None
        else:
            self._timer.start(BETWEEN)

    def _hand_over(self, row: OpenRow) -> bool:
        """Show what was found; whether the row changed."""
        _, operation = self._desk.job.find(row.key)
        reckoned = self._desk.reckoned
        return row.answer(self._found, operation, reckoned.settings.get(row.key) if reckoned else None)
