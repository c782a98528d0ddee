"""Remarks and safety notes about the job on the desk; imported only after the first figures are painted."""

from __future__ import annotations

from typing import Any

from jobsheet.model.job import Job
from jobsheet.model.not_checked import NotChecked
from jobsheet.model.remark import Note, Remark
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.review.engine import reviewed
from jobsheet.review.notes.notes import notes_for
from jobsheet.review.notes.reminders import reminders_for


def remarks_and_notes(
    job: Job, reckoned: Reckoned, facts: tuple[Any, ...] | None = None
) -> tuple[tuple[Remark, ...], tuple[Note, ...], tuple[NotChecked, ...]]:
    """What is wrong or missing in a plan, what is true of its steps and said beside
    them, and what could not be checked.
    """
    notes = notes_for(job, reckoned)
    reminders = reminders_for(job, reckoned)
    said = tuple(
        Note(id=row.id, level="note", text=row.text, source=row.source, scope="step", operation=key)
        for key, rows in reminders.steps.items()
        for row in rows
    )
    read = reviewed(job, reckoned, facts)
    return read.open, (*(note for step in notes.steps.values() for note in step), *said), read.not_checked
