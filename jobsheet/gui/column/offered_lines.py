"""The remarks of an open row as lines, each with what is offered: at once where the row opens, and
after a rest while it is typed into.
"""

from __future__ import annotations

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.remarks import Offer, Offering, RemarkLine
from jobsheet.model.remark import Remark

#: A fix is tried when no remark has changed for so long [ms]: a trial takes 10
#: to 100 ms, and never holds up a key.
REST = 250


class OfferedLines(QObject):
    """Makes the lines anew where the remarks are others; what was offered stands
    until it has been tried again.
    """

    #: A line has another height now.
    changed = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._home = parent
        self.lines: list[RemarkLine] = []
        self._untried: list[RemarkLine] = []
        self._offering: Offering | None = None
        self._timer = QTimer(self, singleShot=True, interval=REST)
        self._timer.timeout.connect(self._try_next)

    def put(self, remarks: tuple[Remark, ...], offering: Offering) -> list[RemarkLine]:
        """Lines for these remarks; those of before are gone."""
        first = self._offering is None
        self._offering = offering
        before = {_about(line.remark): line.offer for line in self.lines}
        for old in self.lines:
            old.hide()
            old.deleteLater()
        self.lines = [
            RemarkLine(remark, offering(remark) if first else before.get(_about(remark), Offer()), self._home)
            for remark in remarks
        ]
        self._untried = [] if first else list(self.lines)
        for line in self.lines:
            line.previewed.connect(self._try)
        if self._untried:
            self._timer.start(REST)
        else:
            self._timer.stop()
        return self.lines

    def _try_next(self) -> None:
        """One line, then a look at what waits."""
        if not self._untried or self._offering is None:
            return
        self._try(self._untried[0])
        if self._untried:
            self._timer.start(0)

    def _try(self, line: RemarkLine) -> None:
        """What is offered with a line that waits; at once where somebody
        comes near, who may press it next.
        """
        if line not in self._untried or self._offering is None:
            return
        self._untried.remove(line)
        if line.take(self._offering(line.remark)):
            self.changed.emit()


def _about(remark: Remark) -> tuple[str, tuple[str, ...], str, int | None]:
    return remark.rule, remark.operations, remark.set_up, remark.line
