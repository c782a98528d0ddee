"""The pages of one job that was named, and whether something in it should stop you."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from jobsheet.cli.output import say
from jobsheet.model.prints import WHOLE, Prints


def pages_of(path: Path, paper: str, working: bool, wanted: Prints = WHOLE) -> tuple[Any, bool]:
    """The pages of a job, and whether something in it should stop you."""
    from jobsheet.cli.named_job import job_named, shots_named
    from jobsheet.clock import today
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.reckoning.run_words import last_times
    from jobsheet.review.engine import reviewed
    from jobsheet.review.notes.notes import notes_for
    from jobsheet.sheet.printing import document_for, lacking
    from jobsheet.storage.job_file import job_source
    from jobsheet.storage.kept.closed_plans import job_of, newer_than
    from jobsheet.storage.photos.kept_photographs import problem_words

    job = job_named(path)
    reckoned = Reckoner(learns=True).reckon(job)
    job = reckoned.job
    from jobsheet.review.plan.solid_facts import facts_of

    read = reviewed(job, reckoned, facts_of(job, reckoned))
    remarks = read.open
    shots = shots_named(job, path)
    document = document_for(
        job,
        reckoned,
        notes_for(job, reckoned),
        remarks,
        not_checked=read.not_checked,
        paper=paper,
        working=working,
        source=job_source(path),
        name=(job_of(path) or path).stem,
        wanted=wanted,
        shots=shots,
        printed_on=today(),
        last_times=last_times(job, job_of(path) or path),
        superseded=newer_than(path),
    )
    for shot in shots:
        if shot.problem:
            say(f"{path.name}: {problem_words(job, shot)}", err=True)
    if missing := lacking(job):
        places = "; ".join(
            f"{lacking.character} ({lacking.code}) in {lacking.where}" for lacking in missing[:8]
        )
        more = f"; and {len(missing) - 8} more" if len(missing) > 8 else ""
        say(
            f"{path.name}: the font has no picture for {places}{more}. The sheet prints the code in its place.",
            err=True,
        )
    for sentence in document.left_out:
        say(f"{path.name}: {sentence}", err=True)
    outcomes = reckoned.operations.values()
    beyond = any(limit.verdict == "beyond" for outcome in outcomes for limit in outcome.limits)
    problems = any(outcome.problem for outcome in outcomes)
    hazards = any(remark.severity == "hazard" for remark in remarks)
    return document, bool(beyond or problems or hazards or read.not_checked)


def close_printed(path: Path, document: Any) -> None:
    """Keep the plan as it was printed, where the job's plans are kept or have
    numbers; say so where it cannot be.

    A job of which nobody counts the plans gets nothing beside it that nobody asked for.
    """
    from jobsheet.clock import today
    from jobsheet.errors import CannotWrite
    from jobsheet.storage.job_file import read_job
    from jobsheet.storage.kept.closed_plans import PRINTED, close_plan, folder_of, job_of

    if job_of(path) is not None or document.source is None:
        return
    number = read_job(path).plan_number
    if not number and not folder_of(path).exists():
        return
    try:
        close_plan(path, document.source, number, PRINTED, today())
    except CannotWrite as error:
        say(f"{path.name}: the printed plan could not be kept beside it: {error}", err=True)
