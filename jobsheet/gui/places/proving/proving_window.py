"""The proving place: left the ladder, right what the machine has shown, under it
one conclusion and what to do.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QSize, QTimer
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMainWindow, QScrollArea, QWidget

from jobsheet.clock import time_of_day, today
from jobsheet.errors import JobsheetError, QuantityError, as_sentence
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms import ask
from jobsheet.gui.forms.boxes import Line
from jobsheet.gui.forms.ground import Ground
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import scroll_style
from jobsheet.gui.places.proving.ladder_asked import asked_at
from jobsheet.gui.places.proving.ladder_side import LadderSide
from jobsheet.gui.places.proving.proved_view import Proved
from jobsheet.gui.places.proving.proving_desk import ProvingDesk
from jobsheet.gui.places.proving.proving_head import ProvingHead
from jobsheet.gui.places.proving.record_acts import RecordActs
from jobsheet.gui.places.proving.record_view import RecordView
from jobsheet.gui.places.proving.rung_words import foreseen_words
from jobsheet.storage.records.proof_log import read_log, strike

if TYPE_CHECKING:
    from jobsheet.model.trials import Trial
    from jobsheet.reckoning.ladder.rung import Ladder
    from jobsheet.report.proving_sheet import Initialled

translate = QCoreApplication.translate
HIGH, GAP = 56, 8
#: The hand has rested after so long [ms].
RESTED = 600
#: Below this width [px at 100 %] the chart stands under the ladder.
BESIDE = 900


class ProvingWindow(QMainWindow):
    """One machine is proved at a time; everything entered is in its log at once."""

    def __init__(self, visit: Visit) -> None:
        super().__init__(visit.parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Proving", "Proving – job sheet"))
        self._visit = visit
        self.desk = ProvingDesk(visit.desk.job, asked_at(visit.desk, visit.at()))
        self._said, self._wrong = "", False
        self._ground = Ground(self, self.place)
        self.setCentralWidget(self._ground)
        self.head = ProvingHead(self)
        self.head.another_wanted.connect(self.another)
        self.head.print_wanted.connect(self.print_sheet)
        self.head.close_wanted.connect(self.close)
        self.left = LadderSide(self.desk, self)
        self.left.start_wanted.connect(self.start)
        self.left.happened.connect(self.happened)
        self.left.machine_changed.connect(self.refresh)
        self.left.height_changed.connect(self.place)
        self.left.need_wanted.connect(self.begin_need)
        self.left.notes_read.connect(self.notes_read)
        #: What takes a moment is worked out once the hand rests, and never while a page is painted.
        self._late = QTimer(self)
        self._late.setSingleShot(True)
        self._late.timeout.connect(self._foresee)
        self.left.asked_anew.connect(lambda: self._late.start(RESTED))
        self.right = Proved(
            self, self.desk, self.take_back, lambda: self.show_record(shown=True), self.narrow
        )
        self.acts = RecordActs()
        self.record = RecordView(self.desk, self.acts, self)
        self.record.recorded.connect(self._recorded)
        self.record.height_changed.connect(self.place)
        self.record.look_at.connect(self._look_at)
        self.record.back_wanted.connect(lambda: self.show_record(shown=False))
        #: Whether the record stands where the chart of a ladder would.
        self._reads = False
        self._area = QScrollArea(self._ground)
        self._area.setWidgetResizable(False)
        self._area.setFrameShape(QScrollArea.Shape.NoFrame)
        self._area.verticalScrollBar().setStyleSheet(scroll_style(look()))
        self._inside = QWidget()
        self._area.setWidget(self._inside)
        for widget in (self.left, self.right, self.record):
            widget.setParent(self._inside)
        self.head.setParent(self._ground)
        self._make_actions()
        now = look()
        size = visit.parent.size()
        self.resize(max(size.width(), now.px(900)), max(size.height(), now.px(640)))
        self.refresh()
        self._late.start(0)

    def _make_actions(self) -> None:
        for keys, slot in (
            (("Ctrl+W",), self.close),
            (("Esc",), self._escape),
            (("Ctrl+Z",), self.undo),
            (("Ctrl+P",), self.print_sheet),
            (("Ctrl+T",), self._to_record),
            (("Ctrl+M",), self._machine_changed),
        ):
            action = QAction(self)
            action.setShortcuts([QKeySequence(key) for key in keys])
            action.triggered.connect(lambda _=False, slot=slot: slot())
            self.addAction(action)

    # --- what is done ---

    def start(self) -> None:
        """Plan the ladder of the form."""
        self._reads = False
        try:
            self.desk.start()
            self._said = ""
        except JobsheetError as error:
            self._refuse(error)
            return
        self._begun()

    def _begun(self) -> None:
        """A ladder lies on the desk: its notes are read first."""
        self.right.finer = None
        self._said, self._reads = "", False
        self.refresh()
        if self.desk.unread:
            self.left.notes.focus_first()
        elif self.desk.current is not None:
            self.left.ladder.setFocus()
        self._late.start(0)

    def begin_need(self, ladder: Ladder) -> None:
        """The ladder that settles steps of the job."""
        self.desk.begin_need(ladder)
        self._begun()

    def narrow(self) -> None:
        """Begin the finer ladder that was offered."""
        if self.right.finer is not None:
            self.desk.begin_finer(self.right.finer)
            self._begun()

    def notes_read(self, given: Initialled) -> None:
        """Initials were given for the stop notes: the first rung opens."""
        self.desk.given = given
        self._said = ""
        self.refresh()
        self.left.ladder.setFocus()

    def _foresee(self) -> None:
        """What takes a moment: what the job needs, what the ladder of the form would
        teach, a finer ladder after an end.
        """
        if self.desk.ladder is not None:
            if self.right.finer is None and self.desk.over:
                self.right.finer = self.desk.finer()
                self.refresh()
                self._look_at(self.right.narrow)
            return
        first = not self.left.needs.rows
        job = self._visit.desk.job
        self.left.needs.put(self.desk.needs(self._visit.desk.reckoned), job.part.number or job.part.name)
        foreseen = self.desk.foreseen()
        self.left.foreseen = foreseen_words(foreseen)
        self.record.foresee(foreseen)
        self.refresh()
        if first and self.left.needs.rows and not isinstance(self.focusWidget(), Line):
            self.left.needs.focus_first()

    def another(self) -> None:
        """Back to the form; what was recorded stays recorded."""
        self.desk.leave()
        self._said = ""
        self._reads = False
        self.right.finer = None
        self.refresh()
        self._late.start(0)

    def show_record(self, *, shown: bool) -> None:
        """The record in place of the chart, or the chart again."""
        self._reads = shown
        self.refresh()
        if shown:
            self.record.focus_lines()
        elif self.desk.current is not None:
            self.left.ladder.setFocus()

    def _to_record(self) -> None:
        self.show_record(shown=True)

    def _machine_changed(self) -> None:
        self._reads = True
        self.refresh()
        self.record.ask_changed()

    def _escape(self) -> None:
        """Leave what is asked, then the record, then the place."""
        if not self.record.question.isHidden():
            self.record.question.close_it()
        elif self._reads and self.desk.ladder is not None:
            self.show_record(shown=False)
        else:
            self.close()

    def _recorded(self, words: str) -> None:
        """Something of the record is otherwise: said here and told to the job."""
        self.right.finer = None
        self._say(words)
        self._visit.proof_changed()
        self._late.start(0)

    def undo(self) -> None:
        """Take back the last thing that was done here; what is being asked is left first."""
        if not self.record.question.isHidden():
            self.record.question.close_it()
            return
        try:
            words = self.acts.undo()
        except JobsheetError as error:
            self._refuse(error)
            return
        if words:
            self._recorded(words)

    def happened(self, digit: int) -> None:
        """What happened on the current rung."""
        ladder = self.left.ladder
        try:
            seconds, tachometer = ladder.number("seconds"), ladder.number("tachometer")
        except QuantityError as problem:
            self._refuse(problem)
            return
        try:
            trial = self.desk.enter(
                digit, seconds=seconds, tachometer=tachometer, slipped=ladder.slipped, note=ladder.note()
            )
        except JobsheetError as error:
            self._refuse(error)
            return
        self.acts.did(lambda: self._entry_back(trial))
        self._said = ""
        self.right.finer = None
        self.refresh()
        self._late.start(0)
        self._visit.proof_changed()
        if self.desk.current is not None:
            ladder.setFocus()

    def _entry_back(self, trial: Trial) -> str:
        """Strike out what was entered, unless that was done by hand since."""
        if trial.id in read_log(trial.machine).struck:
            return translate("Proving", "It was struck out already.")
        strike(
            trial.machine, trial.id, today(), self.desk.asked.role, translate("Proving", "taken back at the desk"), time_of_day()
        )  # fmt: skip
        return self._struck(trial)

    @staticmethod
    def _struck(trial: Trial) -> str:
        return translate("Proving", "Struck out: {outcome}. The log keeps both.").format(
            outcome=trial.outcome
        )

    def take_back(self) -> None:
        """Strike the last trial of this ladder out."""
        try:
            trial = self.desk.take_back()
        except JobsheetError as error:
            self._refuse(error)
            return
        if trial is not None:
            self.acts.did(lambda: self.acts.given(trial, self.desk.asked.role))
            self._recorded(self._struck(trial))

    def print_sheet(self) -> None:
        """Save the proving sheet as PDF."""
        ladder = self.desk.ladder
        if ladder is None or ladder.refused:
            return
        from pathlib import Path

        from jobsheet.gui.desk.job_pdf import proving_pdf
        from jobsheet.storage.exporting_files import export_file, file_name

        given = self.desk.given
        initials: tuple[str, str, str] | None = (given.operator, given.second, given.in_charge)
        if self.desk.unread:
            initials = ask.proving_initials(self)
        if initials is None:
            return
        name = file_name(f"proving-{ladder.machine.name}-{ladder.process}", ".pdf")
        path = ask.export_path(self, Path.home() / name)
        if path is None:
            return
        try:
            export_file(path, proving_pdf(ladder, initials, trainee=self._visit.desk.job.trainee))
            self._say(translate("Proving", "Saved as {name}.").format(name=path.name))
        except JobsheetError as error:
            ask.tell(self, str(error))

    def _say(self, words: str) -> None:
        self._said, self._wrong = words, False
        self.refresh()

    def _refuse(self, error: Exception) -> None:
        """Say why something was not done."""
        self._said, self._wrong = as_sentence(error), True
        self.refresh()

    # --- showing ---

    def refresh(self) -> None:
        """Show everything as it stands."""
        self.head.put(self.desk)
        self.left.put(self.desk, self._said, wrong=self._wrong)
        reads = self._reads or self.desk.ladder is None
        self.right.setVisible(not reads)
        self.record.setVisible(reads)
        if reads:
            self.record.put(self.desk)
        else:
            self.right.put(self.desk)
        self.place()

    def _look_at(self, widget: QWidget) -> None:
        """Scroll to a part of the record."""
        self.place()
        self._area.ensureWidgetVisible(widget, 0, look().px(24))

    def place(self) -> None:
        """Head, then ladder and chart side by side, or one under the other."""
        if not hasattr(self, "_inside"):
            return  # the ground is laid before what lies on it
        now = look()
        ground = self._ground.size()
        self.head.setGeometry(0, 0, ground.width(), now.px(HIGH))
        gap, top = now.px(GAP), now.px(HIGH) + now.px(GAP)
        self._area.setGeometry(gap, top, ground.width() - gap, ground.height() - top - gap)
        # The viewport is not laid out before it is shown: reckon with its size as it will be.
        bar = now.px(12)
        room = QSize(self._area.width() - bar, self._area.height())
        width = room.width() - gap
        reads = not self.record.isHidden()
        beside: QWidget = self.record if reads else self.right
        needed = self.record.arrange if reads else self.right.needed
        if self.width() / now.scale >= BESIDE:
            left = round(width * 0.46)
            right = width - left - gap
            high = max(self.left.arrange(left), needed(right), room.height())
            self.left.setGeometry(0, 0, left, high)
            # A chart is no higher than what is seen at once, however long the ladder beside it is.
            beside.setGeometry(left + gap, 0, right, max(needed(right), room.height()))
            whole = high
        else:
            first = self.left.arrange(width)
            self.left.setGeometry(0, 0, width, first)
            second = needed(width)
            beside.setGeometry(0, first + gap, width, second)
            whole = first + gap + second
        self._inside.resize(width + gap, whole)
        self.left.update()
        if not reads:
            self.right.arrange()
