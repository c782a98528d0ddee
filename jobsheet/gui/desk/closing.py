"""A plan that was printed or made is closed: it is kept as it was, and what is
changed after that becomes the next one.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QWidget

from jobsheet.errors import CannotWrite, JobsheetError
from jobsheet.gui.forms import ask
from jobsheet.storage.plan_mark import plan_mark

if TYPE_CHECKING:
    from jobsheet.gui.desk.desk import Desk
    from jobsheet.model.job import Job
    from jobsheet.storage.kept.closed_plans import ClosedPlan

translate = QCoreApplication.translate


def close_printed(desk: Desk) -> str:
    """Keep the plan on the desk as it was printed; a sentence where it could not be kept.

    A job without a file has nothing beside which it could be kept: the PDF carries it.
    """
    from jobsheet.reckoning.runs_kept import this_moment
    from jobsheet.storage.job_writing import write_job
    from jobsheet.storage.kept.closed_plans import PRINTED, close_plan, job_of

    if desk.path is None or job_of(desk.path) is not None:
        return ""
    try:
        close_plan(desk.path, write_job(desk.job).encode(), desk.job.plan_number, PRINTED, this_moment()[0])
    except CannotWrite as error:
        words = translate("Files", "The printed plan could not be kept beside the job: {why}")
        return words.format(why=error)
    return ""


def next_plan(desk: Desk, path: Path, parent: QWidget) -> bool:
    """Give the plan on the desk its next number where the last one left the desk and something
    is changed; whether it may be saved.

    Asked once: what changed is proposed from the very plan that was printed or
    made, and stands as it is then typed.
    """
    from jobsheet.edit.difference import changes
    from jobsheet.edit.revision_commands import AddRevision, first_plan, next_number, proposed, revised_by
    from jobsheet.reckoning.runs_kept import this_moment
    from jobsheet.storage.job_file import read_job
    from jobsheet.storage.job_writing import write_job
    from jobsheet.storage.kept.closed_plans import closed_as, closed_plans

    plans = closed_plans(path)
    job = desk.job
    number = job.plan_number
    if (
        not plans
        or number > _number_of(plans[-1], job)
        or closed_as(path, write_job(job).encode()) is not None
    ):
        return True
    last = plans[-1]
    try:
        old = read_job(last.path)
    except JobsheetError:
        old = None  # what it was cannot be said: then the person says it
    if old is not None and not changes(old, job, most=None):
        return True
    first = () if number else (first_plan(old if old is not None else job, last.date),)
    after = next_number(job) + len(first)
    who = revised_by(job)
    words = translate(
        "Files", "{plan} is not changed any more: what you changed since becomes plan {number}."
    )
    said = last.words()
    head = words.format(plan=f"{said[:1].upper()}{said[1:]}", number=plan_mark(after))
    found = ask.revision(parent, after, proposed(old, job) if old is not None else "", who, head)
    if found is None:
        return False
    try:
        desk.do(AddRevision(changed=found[0], who=found[1], when=this_moment()[0], before=first))
    except JobsheetError as error:
        ask.tell(parent, str(error))
        return False
    return True


def _number_of(plan: ClosedPlan, job: Job) -> int:
    """The number under which the job knows a closed plan: one that left the desk
    without a number is its first.
    """
    first = job.revisions[0] if job.revisions else None
    return plan.number or (first.number if first is not None and first.when <= plan.date else 0)


def ask_for_drawing(desk: Desk, path: Path, parent: QWidget) -> str:
    """Ask at which revision the drawing is, where a job is taken out again on a
    later day than its plan left the desk.

    What is answered is an edit like any other; a sentence where the drawing is another by now.
    """
    from jobsheet.edit.commands import SetField
    from jobsheet.edit.revision_commands import FIRST, AddRevision
    from jobsheet.reckoning.runs_kept import this_moment
    from jobsheet.storage.kept.closed_plans import closed_plans

    part, plans = desk.job.part, closed_plans(path)
    if not plans or not part.revision or max(plan.date for plan in plans) >= this_moment()[0]:
        return ""
    last = plans[-1]
    said = last.words()
    words = translate(
        "Files",
        "{plan}: made from drawing {drawing}, revision {letter}. At which revision is the drawing today?",
    )
    sentence = words.format(
        plan=f"{said[:1].upper()}{said[1:]}", drawing=part.drawing or part.number, letter=part.revision
    )
    now = ask.drawing_revision(parent, sentence, part.revision)
    if not now or now.casefold() == part.revision.casefold():
        return ""
    if (
        not desk.job.plan_number
    ):  # the remark on the drawing stands by the plan that was made from the old one
        desk.do(AddRevision(changed=FIRST, who=desk.job.planned_by, when=last.date))
    desk.type(SetField("job:part", "revision", now))
    told = translate(
        "Files",
        "The drawing is at {letter} now: look through every size, then give the plan its next number.",
    )
    return told.format(letter=now)
