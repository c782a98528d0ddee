"""Undo and redo: through the history, and to the row that came back."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication

from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.open_rows import OpenRows

translate = QCoreApplication.translate


class TakingBack:
    """The way through the history."""

    def __init__(self, hand: Hand, rows: OpenRows) -> None:
        self._hand = hand
        self._rows = rows

    def undo(self) -> None:
        """Take back the last step, and go to where it was."""
        history = self._hand.desk.history
        label = history.undo_label
        self._travel(history.undo)
        if label:
            self._hand.say(translate("RowEdits", "Undone: {step}.").format(step=label))

    def redo(self) -> None:
        """Do again what was taken back."""
        history = self._hand.desk.history
        label = history.redo_label
        self._travel(history.redo)
        if label:
            self._hand.say(translate("RowEdits", "Done again: {step}.").format(step=label))

    def _travel(self, go: Callable[[object], object]) -> None:
        """Go through the history and show the row that came back."""
        job = self._hand.desk.job
        before = {operation.key for _, operation in job.operations()}
        self._rows.let_go()
        go(self._hand.desk)
        back = [
            operation.key for _, operation in self._hand.desk.job.operations() if operation.key not in before
        ]
        if back:
            self._hand.show_all(back)
