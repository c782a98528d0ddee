"""The chosen job of the shelf: what its file says of it, its plan's revisions and what happened at the machine, the newest first."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from msgspec import Struct
from PySide6.QtCore import QCoreApplication, QRect
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.errors import DocumentError, JobsheetError
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

translate = QCoreApplication.translate
PAD, CAPTION = 14, 92


class Facts(Struct, frozen=True, kw_only=True):
    """What is shown of one job: its title, facts as caption and words, and blocks of lines under a heading."""

    title: str = ""
    facts: tuple[tuple[str, str], ...] = ()
    blocks: tuple[tuple[str, tuple[tuple[str, str], ...]], ...] = ()
    problem: str = ""


def facts_of(path: Path, title_of: Callable[[str], str] = str) -> Facts:
    """Read the job strictly, with what is recorded beside it; a broken one gives its first problems with their lines."""
    from jobsheet.reckoning.run_words import days_told
    from jobsheet.storage.job_file import read_job
    from jobsheet.storage.records.run_log import read_runs

    try:
        job = read_job(path)
        runs, problems = read_runs(path)
    except DocumentError as error:
        said = "\n".join(str(problem) for problem in error.problems[:6])
        return Facts(title=path.name, problem=said)
    except JobsheetError as error:
        return Facts(title=path.name, problem=str(error))
    part = job.part
    say = translate
    facts = (
        (say("Shelf", "Drawing"), ", ".join(word for word in (part.drawing, part.revision) if word)),
        (say("Shelf", "Material"), job.material),
        (say("Shelf", "Machine"), title_of(job.machine)),
        (
            say("Shelf", "Plan"),
            say("Shelf", "{steps} steps in {set_ups} set-ups, {by} {on}").format(
                steps=len(job.operations()), set_ups=len(job.set_ups), by=job.planned_by, on=job.planned_on
            ),
        ),
        (say("Shelf", "File"), path.name),
    )
    revisions = tuple(
        (f"{one.number}, {one.when}", ", ".join(word for word in (one.changed, one.who) if word))
        for one in reversed(job.revisions)
    )
    ran = days_told(runs, job.units)
    blocks = [(say("Shelf", "At the machine"), ran or (("", say("Shelf", "nothing is written down yet")),))]
    if revisions:
        blocks.append((say("Shelf", "Revisions of the plan"), revisions))
    return Facts(
        title=" ".join(word for word in (part.number, part.name) if word), facts=tuple(row for row in facts if row[1].strip(" ,")),
        blocks=tuple(blocks), problem="\n".join(str(problem) for problem in problems[:3]),
    )  # fmt: skip


class ChosenFacts(QWidget):
    """The right half: painted, nothing in it is typed."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.facts = Facts()

    def put(self, facts: Facts) -> None:
        """Show these."""
        self.facts = facts
        lines = [facts.title, *(f"{caption} {words}" for caption, words in facts.facts), facts.problem]
        lines += [f"{heading}: {' '.join(words)}" for heading, rows in facts.blocks for words in rows]
        self.setAccessibleName("\n".join(line for line in lines if line))
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """Title, facts, and the blocks under their rules."""
        now = look()
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), now.colour("paper"))
            ink.frame(painter, self.rect(), now.colour("rule"))
            box = QRect(now.px(PAD), now.px(PAD), self.width() - 2 * now.px(PAD), self.height())
            box.translate(0, ink.paragraph(painter, now, box, self.facts.title, now.title) + now.px(8))
            for caption, words in self.facts.facts:
                self._line(painter, box, caption, words)
            for heading, rows in self.facts.blocks:
                box.translate(0, now.px(8))
                ink.horizontal(painter, now.colour("ink"), 0, self.width(), box.top())
                box.translate(0, now.px(6))
                box.translate(0, ink.paragraph(painter, now, box, heading, now.head) + now.px(4))
                for caption, words in rows:
                    self._line(painter, box, caption, words)
            if self.facts.problem:
                box.translate(0, now.px(10))
                ink.paragraph(painter, now, box, self.facts.problem, now.body, "verm")

    def _line(self, painter: QPainter, box: QRect, caption: str, words: str) -> None:
        now = look()
        aside = now.px(CAPTION) if caption else 0
        ink.write(painter, now, QRect(box.left(), box.top(), aside, now.px(20)), caption, now.label, "pencil")
        beside = QRect(box.left() + aside, box.top(), box.width() - aside, box.height())
        box.translate(0, max(now.px(20), ink.paragraph(painter, now, beside, words, now.body)) + now.px(2))
