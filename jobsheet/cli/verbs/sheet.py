"""`jobsheet sheet JOB... [-o FILE]`: the printed sheets, as a PDF that carries the job inside."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from jobsheet.cli.output import refuse_to_overwrite, say


@click.command("sheet")
@click.argument("jobs", nargs=-1, required=True, metavar="JOB...", type=click.Path())
@click.option(
    "-o", "--output", type=click.Path(), help="where to; else the job's name with .pdf, in this folder"
)
@click.option("--paper", type=click.Choice(["a4", "letter"]), default="a4", show_default=True)
@click.option("--working", is_flag=True, help="with pages that show how every figure came about")
def command(jobs: tuple[str, ...], output: str | None, paper: str, working: bool) -> int:
    """Set-up sheets of one job or several, each with its own cover, in one PDF."""
    from jobsheet.storage.exporting_files import file_name

    target = Path(output) if output else Path(file_name(Path(jobs[0]).stem, ".pdf"))
    refuse_to_overwrite(target, jobs)
    made = [_made(Path(job), paper, working) for job in jobs]

    from jobsheet.sheet.pdf import make_pdf
    from jobsheet.storage.disk import write_file

    documents = tuple(document for document, _ in made)
    write_file(target, make_pdf(documents, paper))
    pages = sum(len(document.pages) for document in documents)
    say(f"{pages} pages for {'A4' if paper == 'a4' else 'Letter'} paper: {target}")
    for job, document in zip(jobs, documents, strict=True):
        if document.open_stops:
            say(
                f"{Path(job).name}: stop notes that nobody has acknowledged, so every page says NOT ACKNOWLEDGED:"
                f" {', '.join(document.open_stops)}"
            )
    return 1 if any(stopped for _, stopped in made) else 0


def _made(path: Path, paper: str, working: bool) -> tuple[Any, bool]:
    """The pages of a job, and whether something in it should stop you."""
    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.review.engine import reviewed
    from jobsheet.review.notes.notes import notes_for
    from jobsheet.sheet.printing import document_for, lacking
    from jobsheet.storage.job_file import job_source

    job = job_named(path)
    found = Reckoner(learns=True).reckon(job)
    job = found.job
    from jobsheet.review.plan.solid_facts import facts_of

    read = reviewed(job, found, facts_of(job, found))
    remarks = read.open
    document = document_for(
        job,
        found,
        notes_for(job, found),
        remarks,
        not_checked=read.not_checked,
        paper=paper,
        working=working,
        source=job_source(path),
        name=path.stem,
    )
    if missing := lacking(job):
        places = "; ".join(f"{one.character} ({one.code}) in {one.where}" for one in missing[:8])
        more = f"; and {len(missing) - 8} more" if len(missing) > 8 else ""
        say(
            f"{path.name}: the font has no picture for {places}{more}. The sheet prints the code in its place.",
            err=True,
        )
    outcomes = found.operations.values()
    beyond = any(limit.verdict == "beyond" for outcome in outcomes for limit in outcome.limits)
    problems = any(outcome.problem for outcome in outcomes)
    hazards = any(one.severity == "hazard" for one in remarks)
    return document, bool(beyond or problems or hazards or read.not_checked)
