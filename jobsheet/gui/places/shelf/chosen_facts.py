"""The chosen job of the shelf: what its file says of it, its plan's revisions and what
happened at the machine, the newest first.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from msgspec.structs import replace
from PySide6.QtCore import QCoreApplication

from jobsheet.errors import DocumentError, JobsheetError
from jobsheet.gui.forms.facts_shown import Facts
from jobsheet.model.job import Job
from jobsheet.storage.plan_mark import plan_mark

translate = QCoreApplication.translate
#: Lines of what is different in another plan of the part; the rest is counted,
#: and `shelf compare` has all of it.
DIFFERENT = 8


def facts_of(path: Path, title_of: Callable[[str], str] = str, others: tuple[Path, ...] = ()) -> Facts:
    """Read the job strictly, with what is recorded beside it; a broken one gives
    its first problems with their lines.

    `others` are files with other plans of the same part: what is different in each is said beside it.
    """
    from jobsheet.reckoning.paces import paces, timed
    from jobsheet.reckoning.run_words import days_told
    from jobsheet.storage.job_file import read_job
    from jobsheet.storage.photos.old_sheets import is_old_sheet
    from jobsheet.storage.records.run_log import read_runs

    if is_old_sheet(path):
        return _old_sheets(path)
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
        (
            f"{plan_mark(revision.number)}, {revision.when}",
            ", ".join(word for word in (revision.changed, revision.who) if word),
        )
        for revision in reversed(job.revisions)
    )
    ran = days_told(runs, job.units)
    blocks = [(say("Shelf", "At the machine"), ran or (("", say("Shelf", "nothing is written down yet")),))]
    factors = paces(timed(runs))
    if factors:
        blocks.append(
            (say("Shelf", "Times, against what was planned"), tuple(("", pace.words()) for pace in factors))
        )
    if revisions:
        blocks.append((say("Shelf", "Revisions of the plan"), revisions))
    blocks += [block for other in others if (block := _beside(job, other, title_of)) is not None]
    return Facts(
        title=" ".join(word for word in (part.number, part.name) if word),
        facts=tuple(row for row in facts if row[1].strip(" ,")),
        blocks=tuple(blocks),
        problem="\n".join(str(problem) for problem in problems[:3]),
    )


def _old_sheets(path: Path) -> Facts:
    """What was typed beside the old sheets of a part, and each of them, with what is wrong with it."""
    from jobsheet.storage.photos.old_sheets import SAID, read_old_sheets, sheet_bytes

    try:
        said = read_old_sheets(path)
    except JobsheetError as error:
        return Facts(title=path.name, problem=str(error))
    problems = []
    for sheet in said.sheets:
        try:
            sheet_bytes(path, sheet)
        except JobsheetError as error:
            problems.append(str(error))
    facts = tuple((translate("Shelf", caption), getattr(said, key)) for key, caption in SAID)
    shown = tuple(("", sheet.shows or sheet.kind) for sheet in said.sheets)
    return Facts(
        title=" ".join(word for word in (said.number, said.name) if word),
        facts=tuple(row for row in facts if row[1]),
        blocks=((translate("Shelf", "Old sheets, no plan yet"), shown),),
        problem="\n".join(problems),
    )


def _beside(
    job: Job, path: Path, title_of: Callable[[str], str]
) -> tuple[str, tuple[tuple[str, str], ...]] | None:
    """Another plan of the part, and what is different in it; None where it cannot be
    read, which is said where it is chosen.
    """
    from jobsheet.edit.difference import changes
    from jobsheet.storage.job_file import read_job

    try:
        other = read_job(path)
    except JobsheetError:
        return None
    # The machine stands in the heading, and which card it was is nothing to read.
    alike = replace(other, machine=job.machine, card_hash=job.card_hash)
    lines = changes(job, alike, most=DIFFERENT) or (translate("Shelf", "nothing is different"),)
    words = translate("Shelf", "Also planned for {machine}, {file}")
    return words.format(machine=title_of(other.machine), file=path.name), tuple(("", line) for line in lines)


def silent_facts(path: Path) -> Facts:
    """Of a file that is still waited for."""
    words = translate("Shelf", "This file does not answer; it is read as soon as it does.")
    return Facts(title=path.name, problem=words)
