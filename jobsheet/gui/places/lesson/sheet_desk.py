"""One sheet of a lesson at the screen: its pages as on paper, what was typed of it, and what the
marking then says. No widget here.

A try holds for what was typed then. Its reasons are shown when they are asked for, and
nothing is kept unless somebody says so.
"""

from __future__ import annotations

from jobsheet.lessons.marked_sheet import Result, marked_plan, marked_sheet
from jobsheet.lessons.own_plan import begun
from jobsheet.model.job import Job
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.reckoning.runs_kept import this_moment
from jobsheet.storage.kept.lesson_results import LessonResult

#: The sorts of exercise with how an answer is typed; which of them ask for figures too.
HOW = {
    "order": "the letters in their order; with several set-ups a word for each, such as Pcab Qde",
    "wrong": "the number of the row in which something is wrong: 7; of several: 7 12",
    "missing": "the number of the row before which something is missing: 7",
    "cutter": "each question with the letter of its tool: 1=b 2=a",
    "figures": "each question with its figure: 1=398 2=320; on a dial 5=2+191",
    "plan": "begin it, plan the part on the desk as you would any job, come back with Ctrl + Shift + L and try",
}
LEVELS = (1, 2, 3, 4)


class SheetDesk:
    """A kind, a level and a number make the exercise; the same ones make it again."""

    def __init__(self, reckoned: Reckoned, seed: int) -> None:
        self.reckoned = reckoned
        self.sort, self.level, self.seed, self.sheet = "wrong", 1, seed, 1
        self.answer = self.figures = ""
        self.result: Result | None = None
        self.reasons = False

    def choose(self, kind: str, level: int, sheet: int) -> None:
        """Another exercise: nothing is answered yet."""
        self.sort, self.level, self.sheet = kind, level, sheet
        self.answer = self.figures = ""
        self.look_again()

    @property
    def asks_figures(self) -> bool:
        """Whether there is a line for figures beside that of the answer."""
        return self.sort == "order" and self.level > 2

    def pages(self, paper: str) -> bytes:
        """The worksheet as a PDF; raises JobsheetError where this job has no such exercise."""
        from jobsheet.report.lesson.lesson_documents import lesson_documents
        from jobsheet.sheet.pages import fits_on
        from jobsheet.sheet.pdf import make_pdf
        from jobsheet.storage.card_files import find_card

        machine = find_card(self.reckoned.job.machine).title
        worksheet, _ = lesson_documents(
            self.sort, self.reckoned, self.level, self.seed, self.sheet, fits_on(paper), machine
        )
        return make_pdf((worksheet,), paper)

    def attempt(self, plan: Job | None = None) -> None:
        """Mark what is typed, or the plan on the desk; raises JobsheetError with
        a sentence where it cannot be read.
        """
        self.look_again()
        if self.sort == "plan":
            self.result = marked_plan(
                self.reckoned.job, plan if plan is not None else begun(self.reckoned.job)
            )
            return
        self.result = marked_sheet(
            self.reckoned, self.sort, self.level, self.seed, self.sheet, self.answer, self.figures
        )

    def look_again(self) -> None:
        """Hide what the marking said, to think once more."""
        self.result, self.reasons = None, False

    @property
    def head(self) -> str:
        """The one line that a try shows."""
        return self.result.lines[0] if self.result is not None else ""

    @property
    def said(self) -> tuple[str, ...]:
        """Whether the part would be good; with the reasons all that the marking says."""
        if self.result is None:
            return ()
        lines = self.result.lines[1:]
        if self.reasons or self.result.right:
            return lines
        return tuple(line for line in lines if line.startswith(("Would the part", "Figures:")))

    def kept_as(self, initials: str) -> LessonResult:
        """The result as a line that may be kept."""
        part = self.reckoned.job.part
        return LessonResult(
            day=this_moment()[0], initials=initials, part=part.number or part.name, exercise=f"{self.sort}, level {self.level}",
            sheet=self.sheet, went=self.head.rstrip("."),
        )  # fmt: skip
