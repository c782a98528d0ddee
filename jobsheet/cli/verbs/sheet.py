"""`jobsheet sheet JOB... [-o FILE]`: the printed sheets, as a PDF that carries the
job inside; of a folder, one a job.
"""

from __future__ import annotations

import os
from pathlib import Path

import click

from jobsheet.cli.output import refuse_to_overwrite, say
from jobsheet.model.prints import PRINTS, Prints, prints


@click.command("sheet")
@click.argument("jobs", nargs=-1, metavar="JOB...", type=click.Path())
@click.option(
    "-o",
    "--output",
    type=click.Path(),
    help="where to; else the job's name with .pdf, in this folder. A folder gets one PDF a job",
)
@click.option(
    "--paper", type=click.Choice(["a4", "letter"]), help="else what the workshop always prints on: a4"
)
@click.option(
    "--page",
    "pages",
    multiple=True,
    type=click.Choice(list(PRINTS)),
    help="which pages; may be said again. Else what the workshop always prints: whole",
)
@click.option(
    "--step", "steps", multiple=True, type=int, help="the step whose card is printed; may be said again"
)
@click.option("--machine", help="the machine of a blank form without any job")
@click.option(
    "--always", is_flag=True, help="keep these pages and this paper as what the workshop always prints"
)
@click.option("--working", is_flag=True, help="with pages that show how every figure came about")
def command(
    jobs: tuple[str, ...], output: str | None, paper: str | None, pages: tuple[str, ...], steps: tuple[int, ...], machine: str | None,
    always: bool, working: bool,
) -> int:  # fmt: skip
    """Set-up sheets of one job or several, each with its own cover, in one PDF.

    Where a folder of jobs is named, or a folder is named to write to, every job gets a PDF of its own.

    Pages for one use: route, every set-up and step on one page; positions, where the handles stand for every
    point; step, a card of half a page for one step (--step 40) or for each; blank, a form to fill in by hand.

    The PDF has title, language, bookmarks and its words in reading order. It is not tagged: a
    program that reads it aloud finds no marks of headings, tables and pictures;
    `jobsheet figures --json` gives the figures to one.
    """
    wanted = _wanted(pages, steps, jobs, machine)
    if paper is None:
        from jobsheet.storage.shop_file import workshop

        paper = workshop().paper
    if always:
        from jobsheet.storage.kept.workshop_kept import keep_prints

        keep_prints(wanted, paper)
        kept = " and ".join(PRINTS[name].lower() for name in wanted.pages)
        say(f"Kept as what this workshop always prints: {kept}, on {_called(paper)} paper.")
    if not jobs and machine:
        return _blank(machine, output, paper)
    if any(is_folder(job) for job in jobs) or (output and _names_a_folder(output)):
        from jobsheet.cli.many_sheets import jobs_in, print_many

        return print_many(jobs_in(jobs), Path(output or "."), paper, working, wanted)
    from jobsheet.storage.exporting_files import file_name

    target = Path(output) if output else Path(file_name(Path(jobs[0]).stem, ".pdf"))
    refuse_to_overwrite(target, jobs)
    from jobsheet.cli.job_pages import close_printed, pages_of

    made = [pages_of(Path(job), paper, working, wanted) for job in jobs]

    from jobsheet.sheet.pdf import make_pdf
    from jobsheet.storage.disk import write_file

    documents = tuple(document for document, _ in made)
    write_file(target, make_pdf(documents, paper))
    _say_pages(sum(len(document.sheets) for document in documents), paper, target)
    for job, document in zip(jobs, documents, strict=True):
        close_printed(Path(job), document)
        if document.open_stops:
            say(
                f"{Path(job).name}: stop notes that nobody has acknowledged, so every page says NOT ACKNOWLEDGED:"
                f" {', '.join(document.open_stops)}"
            )
    return 1 if any(stopped for _, stopped in made) else 0


def _wanted(
    pages: tuple[str, ...], steps: tuple[int, ...], jobs: tuple[str, ...], machine: str | None
) -> Prints:
    """The pages that are asked for; what does not go together is refused."""
    if steps and pages and "step" not in pages:
        raise click.UsageError("--step goes with --page step.")
    if machine and (jobs or pages != ("blank",)):
        raise click.UsageError(
            "--machine is for a blank form without a job: --page blank --machine NAME, no JOB."
        )
    if not jobs and not machine:
        if pages == ("blank",):
            raise click.UsageError("Name a job, or the machine of the form: --machine NAME.")
        raise click.UsageError("Missing argument 'JOB...'.")
    if steps and not pages:
        return prints(("step",), steps)
    if pages:
        return prints(pages, steps)
    from jobsheet.storage.shop_file import workshop

    return workshop().prints


def _blank(machine: str, output: str | None, paper: str) -> int:
    """The form of a machine by itself: no job is carried inside."""
    from jobsheet.sheet.pdf import make_pdf
    from jobsheet.sheet.printing import blank_document
    from jobsheet.storage.disk import write_file
    from jobsheet.storage.exporting_files import file_name

    target = Path(output) if output else Path(file_name(f"{machine} blank form", ".pdf"))
    refuse_to_overwrite(target, ())
    document = blank_document(machine, paper)
    write_file(target, make_pdf((document,), paper))
    _say_pages(len(document.sheets), paper, target)
    return 0


def _called(paper: str) -> str:
    return "A4" if paper == "a4" else "Letter"


def _say_pages(count: int, paper: str, target: Path) -> None:
    say(f"{count} page{'' if count == 1 else 's'} for {_called(paper)} paper: {target}")


def is_folder(name: str) -> bool:
    """Whether a folder of that name is there; what is no name at all is none."""
    return os.path.isdir(name)  # noqa: PTH112  # says no where a path raises


def _names_a_folder(output: str) -> bool:
    """Whether what was named to write to is a folder: one that is there, or a name that
    ends like one. `out.pdf` means a file.
    """
    return output.endswith(("/", "\\")) or (is_folder(output) and not output.lower().endswith(".pdf"))
