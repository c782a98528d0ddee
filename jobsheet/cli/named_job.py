"""The job that a verb is given by name: a file, or the PDF of its sheets, and
then whose card it is reckoned with.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from jobsheet.cli.output import say
from jobsheet.errors import NoSuchEntry
from jobsheet.model.job import Job

if TYPE_CHECKING:
    from jobsheet.storage.carried import Carried
    from jobsheet.storage.photos.kept_photographs import Shot


def job_named(path: Path | str) -> Job:
    """The job in a file or in printed sheets.

    A card of the same content here wins without a word. Another one here counts, and that is
    said on standard error. Where there is none, a person at the keyboard is asked; a script is
    told what to do. Raises as `read_job`.
    """
    from jobsheet.storage import carried, pdf_jobs
    from jobsheet.storage.job_file import job_from_text, read_job

    path = Path(path)
    if not pdf_jobs.is_pdf(path):
        return read_job(path)
    inside = pdf_jobs.inside(path)
    _, text = pdf_jobs.the_only(path, inside.jobs)
    with_it = carried.carried_of(inside.beside, text)
    if with_it is not None:
        _settle(path, with_it)
    return job_from_text(text, path.name)


def shots_named(job: Job, path: Path | str) -> tuple[Shot, ...]:
    """The photographs of a job that was read there: beside its file, or inside its sheets.
    Nothing is looked for where it has none.
    """
    if not job.photographs:
        return ()
    from jobsheet.storage import pdf_jobs
    from jobsheet.storage.photos.kept_photographs import places, shots_of

    path = Path(path)
    given = pdf_jobs.inside(path).photographs if pdf_jobs.is_pdf(path) else {}
    return shots_of(job, places(path), given)


def _settle(path: Path, with_it: Carried) -> None:
    """That there is a card to reckon with, and that it is known whose."""
    from jobsheet.storage import carried

    stands = carried.here(with_it)
    if stands == "other":
        say(
            f"note: the card of {with_it.title} here is another than the one these sheets were planned for; the one here counts",
            err=True,
        )
    if stands != "none":
        return
    question = f"There is no card of {with_it.title} on this computer; these sheets carry it"
    if not sys.stdin.isatty():
        raise NoSuchEntry(f"{question}: open them in the window (jobsheet open {path.name}) to take it over")
    if not click.confirm(f"{question}. Keep it as {with_it.machine}?", err=True):
        raise NoSuchEntry(f"without a card of {with_it.title} nothing can be reckoned")
    taken = carried.take_over(with_it)
    if taken.log_left:
        say(f"note: {taken.log_left}", err=True)
