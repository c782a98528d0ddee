"""The margin of the open row: what to set, the beat, the limits, and how the figures came about."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QRect, Signal, SignalInstance
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look
from jobsheet.gui.margin.beat import BeatView, seconds_a_turn
from jobsheet.gui.margin.dialled import DialsView
from jobsheet.gui.margin.limits_view import LimitsView
from jobsheet.gui.margin.worked_figures import WorkingView
from jobsheet.reckoning.reckoner import Outcome

if TYPE_CHECKING:
    from jobsheet.gui.margin.beside import BesideView
    from jobsheet.gui.margin.plan_view import Plan, PlanView
    from jobsheet.reckoning.answers.all_answers import Answers

SIDE = 17
translate = QCoreApplication.translate


class Margin(QWidget):
    """Figures beside the form; it never asks, it only shows."""

    height_changed = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("Margin", "What the machine is asked for"))
        self.dials = DialsView(self)
        self.beat = BeatView(self)
        self.limits = LimitsView(self)
        self.more = Button(translate("Margin", "Show the working"), self, Manner.LINK)
        self.more.setCheckable(True)
        self.more.toggled.connect(self._toggle)
        self.working: WorkingView | None = None
        self.beside: BesideView | None = None
        self.plan: PlanView | None = None
        self.compact = False
        self._outcome: Outcome | None = None
        self._quiet = ""

    def put(self, outcome: Outcome | None, *, stale: bool, why_not: str, keep_order: bool) -> None:
        """Show an outcome; old figures are marked as old, missing ones are said to be missing."""
        self._outcome = outcome
        dials = outcome.dials if outcome else ()
        limits = outcome.limits if outcome else ()
        self._quiet = (
            "" if dials or limits or why_not else translate("Margin", "Nothing to set on the machine.")
        )
        self.dials.put(dials, stale=stale, why_not=why_not)
        self.beat.put(seconds_a_turn(dials))
        self.limits.put(limits, stale=stale, order=self.limits.names() if keep_order else ())
        figures = outcome.figures if outcome else None
        self.more.setVisible(bool(figures and figures.working))
        if self.working is not None and self.more.isChecked():
            self.working.put(figures)

    def show_plan(self, plan: Plan | None) -> None:
        """The places from above; the picture is made when there are any."""
        if self.plan is None and plan is not None:
            from jobsheet.gui.margin.plan_view import PlanView

            self.plan = PlanView(self)
            self.plan.show()
        if self.plan is not None and self.plan.put(plan):
            self.height_changed.emit()

    def answer(self, answers: Answers, units: str, pace: str, taken: SignalInstance) -> BesideView:
        """Show what else the machine answers; where a handle is wound a watch can time it."""
        if self.beside is None:
            from jobsheet.gui.margin.beside import BesideView

            self.beside = BesideView(units, self)
            self.beside.taken.connect(taken)
            self.beside.height_changed.connect(self.height_changed)
            self.beside.show()
        self.beside.put(answers, timed=bool(pace))
        return self.beside

    def _toggle(self, on: bool) -> None:
        """Open or close the working; it is made when it is first asked for."""
        self.more.setText(
            translate("Margin", "Hide the working") if on else translate("Margin", "Show the working")
        )
        self.more.setAccessibleName(self.more.text())
        if on and self.working is None:
            self.working = WorkingView(self)
        if self.working is not None:
            self.working.setVisible(on)
            if on and self._outcome is not None:
                self.working.put(self._outcome.figures)
        self.height_changed.emit()

    def arrange(self, width: int, *, compact: bool) -> int:
        """Place everything for a width; the height it needs. Compact keeps the beat for the working."""
        now = look()
        self.compact = compact
        side = now.px(SIDE if not compact else 15)
        top = self.dials.arrange(width)
        self.dials.setGeometry(0, 0, width, top)
        showing = self.more.isChecked()
        if not compact or showing:
            high = self.beat.arrange(width)
            self.beat.setVisible(high > 0)
            self.beat.setGeometry(0, top, width, high)
            top += high
        else:
            self.beat.hide()
        if top == 0 and self._quiet:
            top = now.px(44)
        inside = width - 2 * side
        high = self.limits.arrange(inside)
        self.limits.setGeometry(side, top, inside, high)
        top += high
        if not self.more.isHidden():
            hint = self.more.sizeHint()
            overlap = now.px(LimitsView.REST) if self._rest_fits(inside, hint.width()) else 0
            self.more.setGeometry(
                width - side - hint.width() + now.px(8),
                top - overlap - now.px(3),
                hint.width(),
                hint.height(),
            )
            top += hint.height() - overlap - now.px(3)
            self.more.raise_()
        if self.plan is not None:
            high = self.plan.arrange(inside)
            self.plan.setGeometry(side, top, inside, high)
            top += high
        if self.beside is not None:
            high = self.beside.arrange(inside)
            self.beside.setGeometry(side, top, inside, high)
            top += high
        if self.working is not None and showing:
            high = self.working.arrange(inside)
            self.working.setGeometry(side, top, inside, high)
            top += high
        return top + now.px(2)

    def _rest_fits(self, inside: int, button: int) -> bool:
        """Whether the line for the rest and the button stand side by side."""
        return self.limits.has_rest() and self.limits.rest_width() + button < inside

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The words for a step that needs no machine."""
        if not self._quiet:
            return
        now = look()
        with QPainter(self) as painter:
            place = QRect(now.px(SIDE), 0, self.width() - 2 * now.px(SIDE), now.px(44))
            ink.write(painter, now, place, self._quiet, now.body, "pencil")
