"""The closed plans of a job as rows, the newest first: number, when it was printed or made,
the code on its paper, what changed.
"""

from __future__ import annotations

from collections.abc import Sequence

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.storage.kept.closed_plans import ClosedPlan
from jobsheet.storage.plan_mark import plan_mark

translate = QCoreApplication.translate
ROW, PAD, NUMBER = 58, 12, 46


class PlanRows(QWidget):
    """One row is chosen; arrows move the choice, Enter looks at it."""

    chosen = Signal(int)
    wanted = Signal(int)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.plans: Sequence[ClosedPlan] = ()
        self._changed: Sequence[str] = ()
        self._counts = ""
        self.at = -1
        self.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(translate("Plans", "Plans that were printed or made"))

    def put(self, plans: Sequence[ClosedPlan], changed: Sequence[str], counts: str) -> None:
        """Show these, with what changed in each; `counts` is the code of the
        plan that is in the job's file now.
        """
        self.plans, self._changed, self._counts = plans, changed, counts
        self.setFixedHeight(max(1, len(plans)) * look().px(ROW))
        self.choose(0)

    def choose(self, at: int) -> None:
        """Another row."""
        self.at = max(0, min(at, len(self.plans) - 1)) if self.plans else -1
        self.setAccessibleDescription(", ".join(self._words(self.at)) if self.at >= 0 else "")
        self.update()
        self.chosen.emit(self.at)

    def _words(self, at: int) -> tuple[str, str, str]:
        closed_plan = self.plans[at]
        number = plan_mark(closed_plan.number) if closed_plan.number else "–"
        how = {"printed": translate("Plans", "printed {date}"), "made": translate("Plans", "made {date}")}[
            closed_plan.how
        ].format(date=closed_plan.date)
        counts = translate("Plans", "counts now") if closed_plan.code == self._counts else ""
        return number, ", ".join(part for part in (how, counts) if part), self._changed[at]

    def mousePressEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """The row under the pointer is chosen."""
        self.choose(int(event.position().y()) // look().px(ROW))

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:  # noqa: N802
        """And looked at."""
        self.choose(int(event.position().y()) // look().px(ROW))
        if self.at >= 0:
            self.wanted.emit(self.at)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Arrows, and Enter."""
        steps = {QtCore.Qt.Key.Key_Down: 1, QtCore.Qt.Key.Key_Up: -1}
        key = QtCore.Qt.Key(event.key())
        if key in steps:
            self.choose(self.at + steps[key])
        elif key in (QtCore.Qt.Key.Key_Return, QtCore.Qt.Key.Key_Enter) and self.at >= 0:
            self.wanted.emit(self.at)
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The rows."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            for at in range(len(self.plans)):
                self._row(painter, at)

    def _row(self, painter: QPainter, at: int) -> None:
        now = look()
        high = now.px(ROW)
        box = QRect(0, at * high, self.width(), high)
        if at == self.at:
            painter.fillRect(box, now.colour("chosen"))
            painter.fillRect(QRect(0, box.top(), now.px(4), high), now.colour("blue"))
            if self.hasFocus():
                ink.frame(painter, box.adjusted(0, 0, 0, -1), now.colour("bluemark"))
        number, how, changed = self._words(at)
        left, line = now.px(PAD), now.px(22)
        ink.write(painter, now, QRect(left, box.top() + now.px(6), now.px(NUMBER), line), number, now.title)
        left += now.px(NUMBER)
        wide = box.width() - left - now.px(PAD)
        first = QRect(left, box.top() + now.px(6), wide, line)
        after = ink.write(painter, now, first, how, now.bold)
        code = QRect(left + after + now.px(12), first.top(), max(0, wide - after - now.px(12)), line)
        ink.write(painter, now, code, self.plans[at].code, now.caption, "pencil")
        ink.write(painter, now, QRect(left, box.top() + now.px(30), wide, line), changed, now.body, "pencil")
        ink.horizontal(painter, now.colour("rule"), 0, box.width(), box.bottom())
