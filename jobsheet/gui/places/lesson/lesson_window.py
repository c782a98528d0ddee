"""The lesson: one set-up's steps as slips in a shuffle, put in a right order by key or
pointer, and marked when it is asked for.
"""

from __future__ import annotations

from random import SystemRandom

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QDialog, QHBoxLayout, QScrollArea, QVBoxLayout

from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.help_topic import answer_f1
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.plain_widgets import Label
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import scroll_style
from jobsheet.gui.places.lesson.order_board import OrderBoard
from jobsheet.gui.places.lesson.order_desk import OrderDesk
from jobsheet.gui.places.lesson.sheet_window import SheetWindow
from jobsheet.gui.places.lesson.work_shown import WorkShown
from jobsheet.lessons.order_exercise import OrderExercise, order_exercise
from jobsheet.reckoning.reckoner import Reckoned, Reckoner

translate = QCoreApplication.translate
#: A seed of the screen: as many as a person reads off and types again.
SEEDS = 10_000


def open_lesson(visit: Visit) -> None:
    """Open a lesson from the job on the desk; where it has none the sentence says why."""
    seed = SystemRandom().randrange(1, SEEDS)
    if visit.desk.exercise is not None:  # a plan of one's own lies there: it is marked by what was asked
        place = SheetWindow(visit, Reckoner(learns=True).reckon(visit.desk.exercise), seed)
        place.kind.setCurrentIndex(place.kind.findData("plan"))
        place.open()
        return
    reckoned = visit.desk.reckoned or Reckoner().reckon(visit.desk.job)
    try:
        exercise = order_exercise(reckoned, 1, seed, 1)
    except JobsheetError:
        SheetWindow(visit, reckoned, seed).open()  # it says what this job has, and what it has not
        return
    LessonWindow(visit, reckoned, exercise).open()


class LessonWindow(QDialog):
    """The board, one line of what stands there, and what the marking says when it is asked."""

    def __init__(self, visit: Visit, reckoned: Reckoned, exercise: OrderExercise) -> None:
        super().__init__(visit.parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        answer_f1(self)
        self._reckoned, self._visit = reckoned, visit
        self.seed, self.sheet = exercise.seed, exercise.sheet
        self.desk = OrderDesk(exercise)
        now = look()
        self.about = Label("", self)
        self.board = OrderBoard(self)
        self.board.changed.connect(self._show)
        self.board.tried.connect(self.attempt)
        self.board.again.connect(self.look_again)
        self._scroll = QScrollArea(self)
        self._scroll.setWidgetResizable(True)
        self._scroll.setWidget(self.board)
        self._scroll.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        self._scroll.verticalScrollBar().setStyleSheet(scroll_style(now))
        self.work = WorkShown(self)
        self.head = Label("", self)
        self.head.setFont(now.title)
        self.said = Label("", self)
        self.go = Button(translate("Lesson", "Try"), self, Manner.FILLED)
        self.go.clicked.connect(self.attempt)
        self.again = Button(translate("Lesson", "Look again"), self)
        self.again.clicked.connect(self.look_again)
        self.why = Button(translate("Lesson", "Show reasons"), self)
        self.why.clicked.connect(self._reasons)
        self.another = Button(translate("Lesson", "Another shuffle"), self)
        self.another.clicked.connect(self._another)
        others = Button(translate("Lesson", "Other exercises…"), self)
        others.clicked.connect(self._others)
        close = Button(translate("Lesson", "Leave"), self)
        close.clicked.connect(self.reject)
        foot = QHBoxLayout()
        for button in (self.go, self.again, self.why, self.another, others, close):
            foot.addWidget(button)
        foot.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setSpacing(now.px(8))
        whole.addWidget(self.about)
        middle = QHBoxLayout()
        middle.addWidget(self._scroll, 1)
        middle.addWidget(self.work)
        whole.addLayout(middle, 1)
        whole.addWidget(self.head)
        whole.addWidget(self.said)
        whole.addLayout(foot)
        size = visit.parent.size()
        self.resize(max(size.width() - now.px(80), now.px(860)), max(size.height() - now.px(90), now.px(560)))
        self._begin()

    def _begin(self) -> None:
        block = self.desk.exercise.blocks[0]
        part = self._reckoned.job.part
        self.setWindowTitle(translate("Lesson", "A lesson: put the steps in order"))
        words = translate(
            "Lesson",
            "{part}, set-up {number}: {words}. Held in {held}. Put the steps in a right order; more than one may be right."
            " Slips shuffled with {seed}, sheet {sheet}, as on paper.",
        )
        self.about.say(
            words.format(
                part=part.number, number=block.set_up.number, words=block.words, held=block.held or translate("Lesson", "what was not said"),
                seed=self.seed, sheet=self.sheet,
            )
        )  # fmt: skip
        self.board.put(self.desk)
        self._show()
        self.board.setFocus()

    def _show(self) -> None:
        desk = self.desk
        self.head.say(desk.head)
        lines = [*desk.said[1:2], *desk.reason_lines()]
        if desk.reasons and desk.said:
            lines += [line for line in desk.said if line.startswith(("Marks", "Would the part"))]
        self.said.say("\n".join(lines))
        tried = bool(desk.said)
        self.why.setText(
            translate("Lesson", "Hide reasons") if desk.reasons else translate("Lesson", "Show reasons")
        )
        for button in (self.again, self.why):
            button.why_not("" if tried else translate("Lesson", "Try first."))
        self.board.update()
        block = desk.exercise.blocks[0]
        self.work.ask(self._reckoned.job, block.set_up.key, desk.in_a_row)

    def attempt(self) -> None:
        """Mark what stands there."""
        self.desk.attempt()
        self._show()

    def look_again(self) -> None:
        """Hide the marking."""
        self.desk.look_again()
        self._show()
        self.board.setFocus()

    def _reasons(self) -> None:
        self.desk.reasons = not self.desk.reasons
        self._show()
        self.board.setFocus()

    def _others(self) -> None:
        """Find what is wrong or missing, choose the tool, work out the figures, whole jobs in order."""
        SheetWindow(self._visit, self._reckoned, self.seed).open()
        self.accept()

    def _another(self) -> None:
        """The next sheet of the same seed."""
        try:
            exercise = order_exercise(self._reckoned, 1, self.seed, self.sheet + 1)
        except JobsheetError as error:
            self.said.say(str(error))
            return
        self.sheet += 1
        self.desk = OrderDesk(exercise)
        self._begin()
