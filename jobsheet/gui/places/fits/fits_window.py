"""The job on another machine: every step as it is and as it would be there, what no longer fits, and the change itself."""

from __future__ import annotations

from msgspec import Struct
from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QComboBox, QDialog, QHBoxLayout, QLabel, QScrollArea, QVBoxLayout, QWidget

from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink import ink, signs
from jobsheet.gui.ink.look import look, scroll_style
from jobsheet.gui.ink.spoken import verdict_word
from jobsheet.gui.ink.tokens import VERDICTS
from jobsheet.model.job import Job
from jobsheet.reckoning.answers.fits_answer import Fit, Side, StepFit, fits
from jobsheet.storage.card_files import card_names, find_card

translate = QCoreApplication.translate
ROW, HEAD = 44, 28


class PlanFor(Struct, frozen=True):
    """Plan the job for the other machine: its card, and the nearest speeds that it has in place of those it has not."""

    other: Job
    title: str
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return f"plan for {self.title}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        del job
        return self.other


def _side_words(one: Side | None) -> tuple[str, str]:
    """What is set, and what is nearest to giving out."""
    if one is None:
        return "–", ""
    if one.problem:
        return one.problem, ""
    set_at = ", ".join(part for part in (one.spindle, one.seconds and f"{one.seconds} a turn") if part)
    share = (
        translate("Fits", "{share} % torque").format(share=round(one.torque_share * 100))
        if one.torque_share
        else ""
    )
    return set_at or translate("Fits", "nothing to set"), share


class FitTable(QWidget):
    """A row a step: number and title, as planned, as it would be."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.fit: Fit | None = None
        self._steps: tuple[StepFit, ...] = ()

    def put(self, fit: Fit) -> None:
        """Show a job on another card."""
        self.fit = fit
        self._steps = fit.steps
        self._fit_height()
        self.setAccessibleName("; ".join(self._spoken(step) for step in self._steps))
        self.update()

    def _said_high(self, step: StepFit, width: int) -> int:
        """How high the words under a row stand at a width."""
        now = look()
        words = self._says(step)
        return ink.paragraph_height(now, words, now.caption, width - now.px(74)) + now.px(4) if words else 0

    def _high(self, step: StepFit, width: int) -> int:
        return look().px(ROW) + self._said_high(step, width)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Words that wrap need another height."""
        super().resizeEvent(event)
        self._fit_height()

    def _fit_height(self) -> None:
        width = max(self.width(), look().px(500))
        self.setMinimumHeight(look().px(HEAD) + sum(self._high(step, width) for step in self._steps))

    @staticmethod
    def _says(step: StepFit) -> str:
        """What no longer fits, or that the speed is another."""
        said = []
        for limit in step.no_longer:
            words = limit.sentence or f"{limit.title}: {limit.shown}"
            said.append(f"{words[:1].upper()}{words[1:]}".rstrip(". ") + ".")
        if step.retyped:
            words = translate("Fits", "Its speed is none of this machine's: {speed} is nearest.")
            said.append(words.format(speed=step.retyped))
        return " ".join(said)

    def _spoken(self, step: StepFit) -> str:
        after = " ".join(_side_words(step.after))
        word = verdict_word(step.after.verdict) if step.after.verdict in VERDICTS else ""
        return f"{step.number} {step.title}: {after} {word} {self._says(step)}".strip()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Captions, and the rows."""
        if self.fit is None:
            return
        now, width = look(), self.width()
        name = now.px(60)
        first, second = round(width * 0.40), round(width * 0.68)
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            head = now.px(HEAD)
            for x, words in (
                (name, translate("Fits", "step")),
                (first, translate("Fits", "as planned")),
                (second, self.fit.machine.title),
            ):
                ink.write(painter, now, QRect(x, 0, width - x, head), words, now.caption, "pencil")
            ink.horizontal(painter, now.colour("ink"), 0, width, head - 1)
            top = head
            for step in self._steps:
                high = now.px(ROW)
                quiet = "ink" if step.changed else "pencil"
                ink.write(
                    painter,
                    now,
                    QRect(0, top, now.px(46), high),
                    str(step.number),
                    now.body,
                    "pencil",
                    ink.RIGHT,
                )
                ink.write(
                    painter,
                    now,
                    QRect(name, top, first - name - now.px(8), high),
                    step.title,
                    now.body,
                    quiet,
                )
                self._side(painter, QRect(first, top, second - first - now.px(8), high), step.before, quiet)
                self._side(painter, QRect(second, top, width - second - now.px(8), high), step.after, quiet)
                if words := self._says(step):
                    under = self._said_high(step, width)
                    place = QRect(name, top + high - now.px(4), width - now.px(74), under)
                    tone = "verm" if step.no_longer else "pencil"
                    ink.paragraph(painter, now, place, words, now.caption, tone)
                top += self._high(step, width)
                ink.horizontal(painter, now.colour("rule"), 0, width, top - 1)

    @staticmethod
    def _side(painter: QPainter, place: QRect, one: Side | None, tone: str) -> None:
        now = look()
        upper, lower = _side_words(one)
        half = place.height() // 2
        at = place.left()
        if one is not None and one.verdict in VERDICTS:
            icon, _, token = VERDICTS[one.verdict]
            if icon:
                signs.draw(painter, icon, getattr(now.tokens, token), at, place.top() + half, now.px(16))
            lower = ", ".join(
                part for part in (lower, f"{verdict_word(one.verdict)}: {one.governing.lower()}") if part
            )
        at += now.px(23)
        wide = place.right() - at
        ink.write(painter, now, QRect(at, place.top() + now.px(3), wide, half), upper, now.body, tone)
        under = QRect(at, place.top() + half - now.px(2), wide, half)
        ink.write(painter, now, under, lower, now.caption, "pencil")


class FitsWindow(QDialog):
    """A machine to choose, what comes of it, and a button that plans the job for it."""

    def __init__(self, visit: Visit) -> None:
        super().__init__(visit.parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Fits", "The same job on another machine"))
        self._visit = visit
        now = look()
        self.machines = QComboBox(self)
        self.machines.setAccessibleName(translate("Fits", "Machine"))
        for name in card_names():
            try:
                self.machines.addItem(find_card(name).title, name)
            except JobsheetError:
                continue  # a card that cannot be read is told where it is chosen
        self.said = QLabel(self)
        self.said.setFont(now.head)
        self.said.setWordWrap(True)
        self.more = QLabel(self)
        self.more.setWordWrap(True)
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
            self.said.setText(str(error))
            self.more.setText("")
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
        self.said.setText(words.format(count=changed, all=len(fit.steps), lost=lost))
        more = []
        if fit.card_changed:
            more.append(translate("Fits", "The card of this job was changed since it was planned."))
        if fit.dials_change:
            more.append(translate("Fits", "Every dial reading is another there: print the sheets again."))
        more += sorted(
            {
                translate("Fits", "{title}: not known there. {sentence}").format(
                    title=limit.title,
                    sentence=f"{limit.sentence[:1].upper()}{limit.sentence[1:]}".rstrip(".") + ".",
                )
                for step in fit.steps
                for limit in step.after.unknown
            }
        )
        self.more.setText(" ".join(more))
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
