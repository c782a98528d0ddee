"""Sheets of many jobs, each as a PDF of its own in a folder: two processes, and one
that cannot be read stops no other.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from pathlib import Path

from msgspec import Struct

from jobsheet.cli.output import refuse_to_overwrite, say
from jobsheet.errors import CannotWrite, DocumentError, JobsheetError
from jobsheet.model.not_checked import alone
from jobsheet.model.prints import WHOLE, Prints

#: Processes at the same time, and from how many jobs on a second one is worth its
#: start of half a second (timed here).
PROCESSES, FROM = 2, 4
#: What is a job by its name; a PDF of sheets carries one, but whoever names a folder means what is planned.
ENDINGS = (".yaml", ".yml")


class Made(Struct, frozen=True, kw_only=True):
    """What became of one job: its pages and stop notes that are open, or the
    sentence that says why there are none.
    """

    pages: int = 0
    open_stops: tuple[str, ...] = ()
    stopped: bool = False
    refused: str = ""


def jobs_in(given: tuple[str, ...]) -> list[Path]:
    """The jobs among what was named: files as they are, of a folder all job
    files in the order of their names.
    """
    paths: list[Path] = []
    for name in given:
        path = Path(name)
        if path.is_dir():
            inside = sorted(
                other for other in path.iterdir() if other.suffix.lower() in ENDINGS and other.is_file()
            )
            if not inside:
                raise CannotWrite(f"There is no job in {path}: nothing there ends in {' or '.join(ENDINGS)}.")
            paths += inside
        else:
            paths.append(path)
    return paths


def targets(jobs: list[Path], folder: Path) -> list[Path]:
    """A PDF for each job, under its name; a second one of a name gets a number."""
    from jobsheet.storage.exporting_files import file_name

    taken: set[str] = set()
    paths: list[Path] = []
    for job in jobs:
        name, count = file_name(job.stem, ".pdf"), 1
        while name.casefold() in taken:
            count += 1
            name = file_name(f"{job.stem} {count}", ".pdf")
        taken.add(name.casefold())
        paths.append(folder / name)
    return paths


def print_many(jobs: list[Path], folder: Path, paper: str, working: bool, wanted: Prints = WHOLE) -> int:
    """Make them all and say how each went; the exit code is the worst of all: 2
    cannot be read, 1 should stop you.
    """
    if folder.exists() and not folder.is_dir():
        raise CannotWrite(f"{folder} is a file; name a folder for the sheets of several jobs.")
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"The folder {folder} cannot be made: {error.strerror or error}.") from None
    made = targets(jobs, folder)
    worst = done = 0
    for job, target, one in _all(list(zip(jobs, made, strict=True)), paper, working, wanted):
        done += 1
        if one.refused:
            say(f"{done} of {len(jobs)}: {job.name}: {one.refused}", err=True)
            worst = 2
            continue
        stops = f", NOT ACKNOWLEDGED: {', '.join(one.open_stops)}" if one.open_stops else ""
        say(f"{done} of {len(jobs)}: {target.name}, {one.pages} pages{stops}")
        worst = max(worst, int(one.stopped))
    return worst


def _all(
    pairs: list[tuple[Path, Path]], paper: str, working: bool, wanted: Prints = WHOLE
) -> Iterator[tuple[Path, Path, Made]]:
    """Each job with its target and what became of it, as they get done."""
    if len(pairs) < FROM:
        for pair in pairs:
            yield (*pair, alone(partial(made_one, *pair, paper, working, wanted), _ours))
        return
    from concurrent.futures import ProcessPoolExecutor, as_completed
    from multiprocessing import get_context

    # Begun anew, not forked: a fork would carry whatever the window or a test has open.
    with ProcessPoolExecutor(PROCESSES, mp_context=get_context("spawn")) as workers:
        waiting = {workers.submit(made_one, *pair, paper, working, wanted): pair for pair in pairs}
        try:
            for one in as_completed(waiting):
                yield (*waiting[one], alone(one.result, _ours))
        finally:
            workers.shutdown(cancel_futures=True)


def _ours(why: str) -> Made:
    """A fault of the program's own, which no other job has to suffer for."""
    return Made(refused=f"{why}")


def made_one(job: Path, target: Path, paper: str, working: bool, wanted: Prints = WHOLE) -> Made:
    """Write the sheets of one job; a refusal comes back as its sentence."""
    from jobsheet.cli.job_pages import close_printed, pages_of
    from jobsheet.sheet.pdf import make_pdf
    from jobsheet.storage.disk import write_file

    try:
        refuse_to_overwrite(target, (str(job),))
        document, stopped = pages_of(job, paper, working, wanted)
        write_file(target, make_pdf((document,), paper))
        close_printed(job, document)
    except DocumentError as error:
        return Made(refused=str(error))
    except JobsheetError as error:
        return Made(refused=" ".join(str(error).split()))
    return Made(pages=len(document.sheets), open_stops=document.open_stops, stopped=stopped)
