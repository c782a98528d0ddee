"""The job on another machine: every step as it is and as it would be there, what no
longer fits, and the change itself.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QDialog, QHBoxLayout, QScrollArea, QVBoxLayout

from jobsheet.edit.plan_for import PlanFor
from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.help_topic import answer_f1
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.plain_widgets import Choices, Label, named
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import scroll_style
from jobsheet.gui.places.fits.fit_table import FitTable
from jobsheet.reckoning.answers.fits_answer import fits
from jobsheet.storage.card_files import card_names, find_card

translate = QCoreApplication.translate


class FitsWindow(QDialog):
    """A machine to choose, what comes of it, and a button that plans the job for it."""

    def __init__(self, visit: Visit) -> None:
        super().__init__(visit.parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Fits", "The same job on another machine"))
        answer_f1(self)
        self._visit = visit
        now = look()
        self.machines = Choices(self)
        named(self.machines, translate("Fits", "Machine"))
        for name in card_names():
            try:
                self.machines.offer(find_card(name).title, name)
            except JobsheetError:
                continue  # a card that cannot be read is told where it is chosen
        self.said = Label("", self)
        self.said.setFont(now.head)
        self.more = Label("", self)
        self.table = FitTable(self)
        scroll = QScrollArea(self)
        scroll.setWidgetResizable(True)
        scroll.setWidget(self.table)
        scroll.verticalScrollBar().setStyleSheet(scroll_style(now))
        self.take = Button(translate("Fits", "Plan it for this machine"), self, Manner.FILLED)
        self.take.clicked.connect(self._take)
        close = Button(translate("Fits", "Close"), self)
        close.clicked.connect(self.reject)
        row = QHBoxLayout()
        row.addWidget(self.take)
        row.addWidget(close)
        row.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setSpacing(now.px(8))
        for widget in (self.machines, self.said, self.more):
            whole.addWidget(widget)
        whole.addWidget(scroll, 1)
        whole.addLayout(row)
        self.resize(now.px(1000), now.px(700))
        others = [
            i for i in range(self.machines.count()) if self.machines.itemData(i) != visit.desk.job.machine
        ]
        self.machines.setCurrentIndex(others[0] if others else 0)
        self.machines.currentIndexChanged.connect(self.show_fit)
        self.show_fit()

    def show_fit(self) -> None:
        """Reckon the job on the chosen card and show what comes of it."""
        job = self._visit.desk.job
        try:
            fit = fits(job, self.machines.currentData())
        except JobsheetError as error:
            self.said.say(str(error))
            self.more.say("")
            self.take.why_not(str(error))
            return
        lost = sum(1 for step in fit.steps if step.no_longer or step.after.problem)
        changed = sum(1 for step in fit.steps if step.changed)
        if fit.fits:
            words = translate("Fits", "It fits. {count} of {all} steps change.")
        elif lost:
            words = translate(
                "Fits",
                "It does not fit as it stands: {lost} of {all} steps ask more than this machine gives.",
            )
        else:
            words = translate(
                "Fits", "What was beyond stays beyond; nothing new is. {count} of {all} steps change."
            )
        self.said.say(words.format(count=changed, all=len(fit.steps), lost=lost))
        more = []
        if fit.card_changed:
            more.append(translate("Fits", "The card of this job was changed since it was planned."))
        if fit.dials_change:
            more.append(translate("Fits", "All dial readings change: print the sheets again."))
        more += sorted(
            {
                translate("Fits", "{title}, step {number}: {sentence}").format(
                    title=limit.title,
                    number=step.number,
                    sentence=limit.sentence.rstrip(".") + ".",
                )
                for step in fit.steps
                for limit in step.after.untried
            }
        )
        self.more.say(" ".join(more))
        same = self.machines.currentData() == job.machine and not fit.card_changed
        self.take.why_not(translate("Fits", "The job is planned for this machine already.") if same else "")
        self.table.put(fit)

    def _take(self) -> None:
        """Plan the job for it: one edit."""
        fit = self.table.fit
        if fit is not None:
            self._visit.desk.do(PlanFor(fit.other, fit.machine.title))
            self._visit.say(translate("Fits", "Planned for {machine}.").format(machine=fit.machine.title))
            self.accept()
