"""Any exercise at the screen: the worksheet as on paper at the left, at the right what is
typed of it and what the marking says.
"""

from __future__ import annotations

from collections.abc import Sequence

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QDialog, QHBoxLayout, QLineEdit, QSizePolicy, QVBoxLayout

from jobsheet.errors import JobsheetError, as_sentence
from jobsheet.gui.desk.help_topic import answer_f1
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.plain_widgets import Choices, Label, named
from jobsheet.gui.ink.look import look
from jobsheet.gui.pages.pages_view import PagesView
from jobsheet.gui.places.lesson.sheet_desk import HOW, LEVELS, SheetDesk
from jobsheet.lessons.own_plan import begun
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.storage.kept.lesson_results import delete_results, keep_result, kept_results
from jobsheet.storage.shop_file import workshop

translate = QCoreApplication.translate
#: The sheets of a class that can be chosen here.
SHEETS = 40


class SheetWindow(QDialog):
    """Enter tries; what a try says first is the result alone."""

    def __init__(self, visit: Visit, reckoned: Reckoned, seed: int) -> None:
        super().__init__(visit.parent)
        self._visit = visit
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Lesson", "A lesson: exercises"))
        answer_f1(self)
        self.desk = SheetDesk(reckoned, seed)
        self._paper = workshop().paper
        self._lay_out()
        for choice in (self.kind, self.level, self.sheet):
            choice.currentIndexChanged.connect(lambda _: self._choose())
        size = visit.parent.size()
        now = look()
        self.resize(max(size.width() - now.px(80), now.px(900)), max(size.height() - now.px(80), now.px(560)))
        self._choose()

    def _lay_out(self) -> None:
        now = look()
        self.view = PagesView(self)
        self.view.setAccessibleName(translate("Lesson", "The worksheet"))
        self.finished.connect(self.view.let_go)
        words = {
            "order": translate("Lesson", "put in order"),
            "wrong": translate("Lesson", "find what is wrong"),
            "missing": translate("Lesson", "find what is missing"),
            "cutter": translate("Lesson", "choose the tool"),
            "figures": translate("Lesson", "work out the figures"),
            "plan": translate("Lesson", "plan it yourself"),
        }
        self.kind = self._choices(
            translate("Lesson", "Exercise"), [(words[sort], sort) for sort in HOW], self.desk.sort
        )
        self.level = self._choices(translate("Lesson", "Level"), [(str(level), level) for level in LEVELS], 1)
        numbers = [(str(sheet), sheet) for sheet in range(1, SHEETS + 1)]
        self.sheet = self._choices(translate("Lesson", "Sheet"), numbers, 1)
        self.how = Label("", self)
        self.answer = self._line(translate("Lesson", "Your answer"))
        self.figures_said = Label(translate("Lesson", "Your figures"), self)
        self.figures = self._line(translate("Lesson", "Your figures"))
        self.head, self.said, self.kept = Label("", self), Label("", self), Label("", self)
        self.head.setFont(now.title)
        self.go = Button(translate("Lesson", "Try"), self, Manner.FILLED)
        self.begin = Button(translate("Lesson", "Begin it on the desk"), self)
        self.begin.clicked.connect(self._begin)
        self.again = Button(translate("Lesson", "Look again"), self)
        self.why = Button(translate("Lesson", "Show reasons"), self)
        self.keep = Button(translate("Lesson", "Keep the result"), self)
        self.delete = Button(translate("Lesson", "Delete all that is kept"), self)
        close = Button(translate("Lesson", "Leave"), self)
        for button, act in (
            (self.go, self.attempt), (self.again, self.look_again), (self.why, self._reasons), (self.keep, self._keep),
            (self.delete, self._delete), (close, self.reject),
        ):  # fmt: skip
            button.clicked.connect(lambda _=False, act=act: act())
        self.initials = self._line(translate("Lesson", "Initials or number, if the result is to be kept"))
        self.initials.setPlaceholderText(translate("Lesson", "initials"))
        self.initials.setFixedWidth(now.px(120))
        top, tries, keeps, foot = QHBoxLayout(), QHBoxLayout(), QHBoxLayout(), QHBoxLayout()
        for choice in (self.kind, self.level, self.sheet):
            caption = Label(choice.accessibleName(), self)
            caption.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
            caption.setFixedWidth(now.width(choice.accessibleName(), now.body) + now.px(12))
            top.addWidget(caption)
            top.addWidget(choice)
        top.addStretch(1)
        for button in (self.begin, self.go, self.again, self.why):
            tries.addWidget(button)
        tries.addStretch(1)
        for widget in (self.initials, self.keep, self.delete):
            keeps.addWidget(widget)
        keeps.addStretch(1)
        foot.addStretch(1)
        foot.addWidget(close)
        right = QVBoxLayout()
        right.setSpacing(now.px(8))
        for line in (self.how, self.answer, self.figures_said, self.figures):
            right.addWidget(line)
        right.addLayout(tries)
        right.addWidget(self.head)
        right.addWidget(self.said)
        right.addStretch(1)
        right.addLayout(keeps)
        right.addWidget(self.kept)
        right.addLayout(foot)
        middle = QHBoxLayout()
        middle.addWidget(self.view, 56)
        middle.addLayout(right, 44)
        whole = QVBoxLayout(self)
        whole.addLayout(top)
        whole.addLayout(middle, 1)

    def _choices(self, name: str, offered: Sequence[tuple[str, object]], first: object) -> Choices:
        box = Choices(self)
        named(box, name)
        for words, value in offered:
            box.offer(words, value)
        box.setCurrentIndex(next(at for at, (_, value) in enumerate(offered) if value == first))
        return box

    def _line(self, name: str) -> QLineEdit:
        line = QLineEdit(self)
        line.setAccessibleName(name)
        line.setMinimumHeight(look().px(32))
        line.returnPressed.connect(self.attempt)
        return line

    # --- what is done ---

    def _choose(self) -> None:
        """The exercise that is chosen; where this job has none of it the
        sentence stands in the place of its pages.
        """
        self.desk.choose(
            str(self.kind.currentData()), int(self.level.currentData()), int(self.sheet.currentData())
        )
        self.answer.clear()
        self.figures.clear()
        try:
            self.view.show_pdf(self.desk.pages(self._paper))
            problem = ""
        except JobsheetError as error:
            self.view.show_none()
            problem = as_sentence(error)
        for widget in (self.go, self.answer, self.figures):
            widget.setEnabled(not problem)
        self._show(problem)
        if not problem:
            self.answer.setFocus()

    def attempt(self) -> None:
        """Mark what is typed."""
        if not self.go.isEnabled():
            return
        if self.sender() is self.initials:
            self._keep()
            return
        self.desk.answer, self.desk.figures = self.answer.text(), self.figures.text()
        if self.desk.sort == "figures":
            self.desk.answer, self.desk.figures = "", self.answer.text()
        try:
            self.desk.attempt(self._visit.desk.job)
        except JobsheetError as error:
            self._show(as_sentence(error))
            return
        self._show()

    def _begin(self) -> None:
        """The part with its drawing in words on the desk, and no step of it: the job
        that it came from is kept to mark by.
        """
        try:
            job = begun(self.desk.reckoned.job)
        except JobsheetError as error:
            self._show(as_sentence(error))
            return
        if self._visit.begin_exercise(job, self.desk.reckoned.job):
            self.accept()

    def look_again(self) -> None:
        """Hide the marking."""
        self.desk.look_again()
        self._show()
        self.answer.setFocus()

    def _reasons(self) -> None:
        self.desk.reasons = not self.desk.reasons
        self._show()

    def _keep(self) -> None:
        if self.desk.result is None:
            return
        try:
            keep_result(self.desk.kept_as(self.initials.text()))
        except JobsheetError as error:
            self._show(as_sentence(error))
            return
        self._show()

    def _delete(self) -> None:
        try:
            delete_results()
        except OSError as error:
            self._show(translate("Lesson", "They cannot be deleted: {why}.").format(why=error.strerror))
            return
        self._show()

    def _show(self, problem: str = "") -> None:
        desk = self.desk
        self.how.say(translate("Lesson", "Your answer: {how}").format(how=HOW[desk.sort]))
        for widget in (self.figures_said, self.figures):
            widget.setVisible(desk.asks_figures)
        plans = desk.sort == "plan"
        self.answer.setVisible(not plans)
        self.begin.setVisible(plans)
        self.head.say(problem or desk.head)
        self.said.say("\n".join(desk.said))
        self.why.setText(
            translate("Lesson", "Hide reasons") if desk.reasons else translate("Lesson", "Show reasons")
        )
        tried = desk.result is not None
        for button in (self.again, self.why, self.keep):
            button.why_not("" if tried else translate("Lesson", "Try first."))
        try:
            count = len(kept_results())
        except JobsheetError as error:
            self.kept.say(as_sentence(error))
            return
        self.delete.why_not("" if count else translate("Lesson", "Nothing is kept."))
        self.kept.say(
            translate("Lesson", "{count} results are kept, in your own folder on this computer.").format(
                count=count
            )
            if count
            else translate(
                "Lesson", "Nothing is kept unless you say so: by initials, on this computer alone."
            )
        )
