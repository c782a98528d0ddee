"""The proving place: left the ladder, right what the machine has shown, under it one conclusion and what to do."""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QSize
from PySide6.QtGui import QAction, QKeySequence, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QMainWindow, QScrollArea, QWidget

from jobsheet.errors import JobsheetError, QuantityError
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms import ask
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import scroll_style
from jobsheet.gui.places.proving.ladder_side import LadderSide
from jobsheet.gui.places.proving.proved_view import Proved
from jobsheet.gui.places.proving.proving_desk import ProvingDesk
from jobsheet.gui.places.proving.proving_head import ProvingHead

translate = QCoreApplication.translate
HIGH, GAP = 56, 8
#: Below this width [px at 100 %] the chart stands under the ladder.
BESIDE = 900


class ProvingWindow(QMainWindow):
    """One machine is proved at a time; everything entered is in its log at once."""

    def __init__(self, visit: Visit) -> None:
        super().__init__(visit.parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Proving", "Proving – job sheet"))
        self._visit = visit
        self.desk = ProvingDesk(visit.desk.job)
        self._said = ""
        self._ground = _Ground(self)
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
        self.right = Proved(self, self.desk, self.take_back)
        self._area = QScrollArea(self._ground)
        self._area.setWidgetResizable(False)
        self._area.setFrameShape(QScrollArea.Shape.NoFrame)
        self._area.verticalScrollBar().setStyleSheet(scroll_style(look()))
        self._inside = QWidget()
        self._area.setWidget(self._inside)
        for widget in (self.left, self.right):
            widget.setParent(self._inside)
        self.head.setParent(self._ground)
        self._make_actions()
        now = look()
        size = visit.parent.size()
        self.resize(max(size.width(), now.px(900)), max(size.height(), now.px(640)))
        self.refresh()

    def _make_actions(self) -> None:
        for keys, slot in (
            (("Ctrl+W", "Esc"), self.close),
            (("Ctrl+Z",), self.take_back),
            (("Ctrl+P",), self.print_sheet),
        ):
            action = QAction(self)
            action.setShortcuts([QKeySequence(key) for key in keys])
            action.triggered.connect(lambda _=False, slot=slot: slot())
            self.addAction(action)

    # --- what is done ---

    def start(self) -> None:
        """Plan the ladder of the form."""
        try:
            self.desk.start()
            self._said = ""
        except JobsheetError as error:
            words = str(error)
            self._said = f"{words[:1].upper()}{words[1:]}".rstrip(".") + "."
        self.refresh()
        if self.desk.current is not None:
            self.left.ladder.setFocus()

    def another(self) -> None:
        """Back to the form; what was recorded stays recorded."""
        self.desk.ladder = None
        self.desk.done = {}
        self._said = ""
        self.refresh()

    def happened(self, digit: int) -> None:
        """What happened on the current rung."""
        ladder = self.left.ladder
        try:
            seconds, tachometer = ladder.number("seconds"), ladder.number("tachometer")
        except QuantityError as problem:
            self._say(str(problem))
            return
        try:
            self.desk.enter(
                digit, seconds=seconds, tachometer=tachometer, slipped=ladder.slipped, note=ladder.note()
            )  # fmt: skip
        except JobsheetError as error:
            self._say(str(error))
            return
        self._said = ""
        self.refresh()
        self._visit.proof_changed()
        if self.desk.current is not None:
            ladder.setFocus()

    def take_back(self) -> None:
        """Strike the last trial of this ladder out."""
        try:
            trial = self.desk.take_back()
        except JobsheetError as error:
            self._say(str(error))
            return
        if trial is not None:
            self._say(
                translate("Proving", "Struck out: {outcome}. The log keeps both.").format(
                    outcome=trial.outcome
                )
            )
            self._visit.proof_changed()

    def print_sheet(self) -> None:
        """Save the proving sheet as PDF."""
        ladder = self.desk.ladder
        if ladder is None or ladder.refused:
            return
        from pathlib import Path

        from jobsheet.gui.desk.job_pdf import proving_pdf
        from jobsheet.storage.exporting_files import export_file, file_name

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
        self._said = words
        self.refresh()

    # --- showing ---

    def refresh(self) -> None:
        """Show everything as it stands."""
        self.head.put(self.desk)
        self.left.put(self.desk, self._said)
        self.right.put(self.desk)
        self.place()

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
        if self.width() / now.scale >= BESIDE:
            left = round(width * 0.46)
            right = width - left - gap
            high = max(self.left.arrange(left), self.right.needed(right), room.height())
            self.left.setGeometry(0, 0, left, high)
            self.right.setGeometry(left + gap, 0, right, high)
            whole = high
        else:
            first = self.left.arrange(width)
            self.left.setGeometry(0, 0, width, first)
            second = self.right.needed(width)
            self.right.setGeometry(0, first + gap, width, second)
            whole = first + gap + second
        self._inside.resize(width + gap, whole)
        self.left.update()
        self.right.arrange()


class _Ground(QWidget):
    """The bench under the sheets."""

    def __init__(self, window: ProvingWindow) -> None:
        super().__init__(window)
        self._window = window

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Everything is placed on it anew."""
        super().resizeEvent(event)
        self._window.place()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Bench."""
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), look().colour("bench"))
