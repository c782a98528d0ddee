"""Earlier plans of the job on the desk: what is different now, its sheets as
they were, and bringing one back.
"""

from __future__ import annotations

from pathlib import Path

from msgspec.structs import replace
from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QDialog, QHBoxLayout, QScrollArea, QVBoxLayout

from jobsheet.drawing.drawn import Drawing
from jobsheet.edit.difference import changes
from jobsheet.edit.revision_commands import BringBack, first_plan, revised_by
from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.aside.asked_aside import Aside
from jobsheet.gui.desk.help_topic import answer_f1
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms import ask
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.facts_shown import Facts, FactsShown
from jobsheet.gui.forms.plain_widgets import Label
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import scroll_style
from jobsheet.gui.places.plans.plan_rows import PlanRows
from jobsheet.model.job import Job
from jobsheet.reckoning.runs_kept import this_moment
from jobsheet.report.pictured.revision_picture import revision_picture
from jobsheet.storage.check_code import check_code
from jobsheet.storage.job_file import read_job
from jobsheet.storage.kept.closed_plans import ClosedPlan, closed_plans, is_whole
from jobsheet.storage.plan_mark import plan_mark

translate = QCoreApplication.translate


class PlansWindow(QDialog):
    """Arrows choose, Enter looks at the sheets, B brings it back."""

    def __init__(self, visit: Visit) -> None:
        super().__init__(visit.parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Plans", "Earlier plans"))
        answer_f1(self)
        self._visit = visit
        self._jobs: dict[Path, Job | str] = {}
        self._lay_out()
        path = visit.desk.path
        plans = tuple(reversed(closed_plans(path))) if path is not None else ()
        counts = check_code(path.read_bytes()) if path is not None and path.is_file() else ""
        self.rows.chosen.connect(lambda _: self._show())
        self.rows.wanted.connect(lambda _: self.look_at())
        self.rows.put(plans, [self._changed(plan) for plan in plans], counts)
        if plans:
            said = translate(
                "Plans",
                "A plan that was printed or made stays as it was. What is changed becomes the next one.",
            )
        elif path is None:
            said = translate(
                "Plans", "This job has no file yet: its plans are kept beside it from the first print on."
            )
        else:
            said = translate(
                "Plans", "Nothing of this job was printed or made yet: then its plan is kept here as it was."
            )
        self.said.say(said)
        self.rows.setFocus()

    def _lay_out(self) -> None:
        now = look()
        self.said = Label("", self)
        self.rows = PlanRows(self)
        scroll = QScrollArea(self)
        scroll.setWidgetResizable(True)
        scroll.setWidget(self.rows)
        scroll.setFocusPolicy(QtCore.Qt.FocusPolicy.NoFocus)
        scroll.verticalScrollBar().setStyleSheet(scroll_style(now))
        self.facts = FactsShown(self)
        self.sheets = Button(translate("Plans", "Look at its sheets"), self, Manner.FILLED)
        self.sheets.clicked.connect(self.look_at)
        self.back = Button(translate("Plans", "Bring it back"), self)
        self.back.clicked.connect(self.bring_back)
        close = Button(translate("Plans", "Close"), self)
        close.clicked.connect(self.reject)
        middle, foot = QHBoxLayout(), QHBoxLayout()
        middle.addWidget(scroll, 50)
        middle.addWidget(self.facts, 50)
        for button in (self.sheets, self.back, close):
            foot.addWidget(button)
        foot.addStretch(1)
        whole = QVBoxLayout(self)
        whole.setSpacing(now.px(8))
        whole.addWidget(self.said)
        whole.addLayout(middle, 1)
        whole.addLayout(foot)
        size = self._visit.parent.size()
        self.resize(
            max(size.width() - now.px(120), now.px(860)), max(size.height() - now.px(140), now.px(480))
        )

    # --- one plan ---

    def _job(self, plan: ClosedPlan) -> Job | str:
        """The plan as it left the desk; a sentence where it cannot be read, or is not what left it."""
        if plan.path not in self._jobs:
            try:
                found: Job | str = read_job(plan.path)
                if not is_whole(plan):
                    found = translate(
                        "Plans",
                        "{name} was changed since it left the desk: it is not the plan of code {code}.",
                    ).format(name=plan.path.name, code=plan.code)
            except (JobsheetError, OSError) as error:
                found = str(error)
            self._jobs[plan.path] = found
        return self._jobs[plan.path]

    def _changed(self, plan: ClosedPlan) -> str:
        """What changed in it against the one before, as it was typed."""
        job = self._job(plan)
        if isinstance(job, str):
            return translate("Plans", "cannot be read")
        last = job.revisions[-1] if job.revisions else None
        if last is None:
            return translate("Plans", "first plan, without a number")
        return ", ".join(word for word in (last.changed, last.who) if word)

    @property
    def plan(self) -> ClosedPlan | None:
        """The one that is chosen."""
        return self.rows.plans[self.rows.at] if self.rows.at >= 0 else None

    def _show(self) -> None:
        plan = self.plan
        if plan is None:
            self.sheets.setEnabled(False)
            self.back.setEnabled(False)
            self.facts.put(Facts())
            return
        job = self._job(plan)
        said = plan.words()
        title = f"{said[:1].upper()}{said[1:]}"
        readable = not isinstance(job, str)
        self.sheets.setEnabled(readable)
        self.back.setEnabled(readable)
        if isinstance(job, str):
            self.facts.put(Facts(title=title, problem=job))
            return
        now = self._visit.desk.job
        lines = changes(job, now, most=None)
        rows = tuple(("", line) for line in lines) or (
            ("", translate("Plans", "nothing: it says what lies on the desk")),
        )
        part = job.part
        facts = (
            (
                translate("Plans", "Drawing"),
                ", ".join(word for word in (part.drawing, part.revision) if word),
            ),
            (translate("Plans", "Machine"), job.machine),
            (translate("Plans", "Check"), plan.code),
        )
        self.facts.put(
            Facts(
                title=title,
                facts=tuple(row for row in facts if row[1]),
                blocks=((translate("Plans", "What is different now"), rows),),
            )
        )
        self._draw(plan, job)

    def _draw(self, plan: ClosedPlan, job: Job) -> None:
        """Its finished part beside the facts, what it changed against the plan
        before it heavy; made beside the window.
        """
        earlier = (
            self._job(self.rows.plans[self.rows.at + 1]) if self.rows.at + 1 < len(self.rows.plans) else None
        )
        before = earlier if isinstance(earlier, Job) else None
        asked = Aside(self, lambda: revision_picture(before, job))

        def show() -> None:
            if self.plan is plan and isinstance(asked.answer, Drawing):
                row = (translate("Plans", "Heavy lines"), translate("Plans", "what this plan changed"))
                facts = self.facts.facts
                told = (*facts.facts, row) if before is not None else facts.facts
                self.facts.put(replace(facts, facts=told, picture=asked.answer))

        asked.done.connect(show)

    # --- what is done with it ---

    def look_at(self) -> None:
        """Its sheets as they would print: every page says by what it is superseded."""
        from jobsheet.gui.desk.desk import Desk
        from jobsheet.gui.pages.exporting import Exporting

        plan = self.plan
        job = self._job(plan) if plan is not None else ""
        if plan is None or isinstance(job, str):
            return
        desk = Desk(job)
        desk.path = plan.path
        desk.learn()
        Exporting(desk, self, self.said.say).print_sheets()

    def bring_back(self) -> None:
        """The plan on the desk says what that one says, as one edit; saving gives it the next number."""
        plan = self.plan
        job = self._job(plan) if plan is not None else ""
        if plan is None or isinstance(job, str):
            return
        desk = self._visit.desk
        if not changes(job, desk.job, most=None):
            self.said.say(
                translate("Plans", "That is what lies on the desk: there is nothing to bring back.")
            )
            return
        try:
            now = desk.job
            first = () if now.revisions else (first_plan(job, plan.date),)
            desk.do(
                BringBack(
                    plan=job, called=plan.words(), who=revised_by(now), when=this_moment()[0], before=first
                )
            )
        except JobsheetError as error:
            ask.tell(self, str(error))
            return
        words = translate("Plans", "Brought back: {plan}. It is plan {number} now; Undo takes it away again.")
        self._visit.say(words.format(plan=plan.words(), number=plan_mark(desk.job.plan_number)))
        self.accept()
