"""What lies on the desk at the start, read before the toolkit is there: it slows every import after it."""

from __future__ import annotations

import contextlib
from itertools import islice
from pathlib import Path

from msgspec import Struct

from jobsheet import paths
from jobsheet.errors import JobsheetError
from jobsheet.model.job import Job
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import job_digest, read_job
from jobsheet.storage.pdf_jobs import is_pdf

#: So many steps are reckoned before the window is made: those that it paints first,
#: and all of a job that is no longer.
FIRST = 40
SAMPLE = "hm-100-drilled-plate-b1.yaml"


class Opened(Struct, frozen=True, kw_only=True):
    """A job with where it came from: a file, or a sample, which is an unsaved copy; and what went wrong."""

    job: Job
    path: Path | None = None
    sample: str = ""
    digest: str | None = None
    problem: str = ""
    #: Printed sheets about which a person is asked something first.
    paper: Path | None = None


def open_at_start(path: str | None) -> Opened:
    """The job in a file; where none is asked for the last one; a copy of the sample where
    there is none or it cannot be used.
    """
    opened = _opened(path if path is not None else _last())
    with contextlib.suppress(JobsheetError):
        # Figures are remembered by value: what is reckoned here is ready when the window asks for
        # it, and what was read for it is kept.
        reckoned = Reckoner().reckon(opened.job)
        tuple(islice(reckoned.operations.values(), FIRST))
    return opened


def _last() -> str | None:
    """The job that was open last, where it still is."""
    if not (paths.own_folder() / "recent.json").is_file():
        return None  # a first start reads nothing for it
    from jobsheet.storage.kept.recent import last

    path = last()
    return str(path) if path is not None else None


def _opened(path: str | None) -> Opened:
    """The job with where it came from."""
    problem = ""
    if path is not None and is_pdf(Path(path)):
        return Opened(job=read_job(paths.sample_jobs() / SAMPLE), sample=SAMPLE, paper=Path(path))
    if path is not None and not is_sample(Path(path)):
        try:
            if Path(path).parent.name.endswith(".plans"):
                from jobsheet.storage.kept.closed_plans import job_of

                if (whose := job_of(Path(path))) is not None:  # a closed plan is not written over
                    return Opened(job=read_job(path), sample=whose.name)
            digest = job_digest(path)
            return Opened(job=read_job(path), path=Path(path), digest=digest)
        except JobsheetError as error:
            problem = str(error)
    sample = Path(path) if path is not None and not problem else paths.sample_jobs() / SAMPLE
    return Opened(job=read_job(sample), sample=sample.name, problem=problem)


def is_sample(path: Path) -> bool:
    """Whether a file is one of those shipped with the program."""
    return path.resolve().parent == paths.sample_jobs().resolve()
