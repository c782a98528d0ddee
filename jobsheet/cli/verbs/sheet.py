"""`jobsheet sheet JOB... [-o FILE]`: the printed sheets, as a PDF that carries the job inside; of a folder, one a job."""

from __future__ import annotations

import os
from pathlib import Path

import click

from jobsheet.cli.output import refuse_to_overwrite, say


@click.command("sheet")
@click.argument("jobs", nargs=-1, required=True, metavar="JOB...", type=click.Path())
@click.option(
    "-o",
    "--output",
    type=click.Path(),
    help="where to; else the job's name with .pdf, in this folder. A folder gets one PDF a job",
)
@click.option("--paper", type=click.Choice(["a4", "letter"]), default="a4", show_default=True)
@click.option("--working", is_flag=True, help="with pages that show how every figure came about")
def command(jobs: tuple[str, ...], output: str | None, paper: str, working: bool) -> int:
    """Set-up sheets of one job or several, each with its own cover, in one PDF.

    Where a folder of jobs is named, or a folder is named to write to, every job gets a PDF of its own.
    """
    if any(is_folder(job) for job in jobs) or (output and _names_a_folder(output)):
        from jobsheet.cli.many_sheets import jobs_in, print_many

        return print_many(jobs_in(jobs), Path(output or "."), paper, working)
    from jobsheet.storage.exporting_files import file_name

    target = Path(output) if output else Path(file_name(Path(jobs[0]).stem, ".pdf"))
    refuse_to_overwrite(target, jobs)
    from jobsheet.cli.job_pages import pages_of

    made = [pages_of(Path(job), paper, working) for job in jobs]

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


def is_folder(name: str) -> bool:
    """Whether a folder of that name is there; what is no name at all is none."""
    return os.path.isdir(name)  # noqa: PTH112  # says no where a path raises


def _names_a_folder(output: str) -> bool:
    """Whether what was named to write to is a folder: one that is there, or a name that ends like one. `out.pdf` means a file."""
    return output.endswith(("/", "\\")) or (is_folder(output) and not output.lower().endswith(".pdf"))
