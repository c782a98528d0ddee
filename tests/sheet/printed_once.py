"""The sheets of the samples, printed once a process for all tests that only read
them: documents and files are values.

They are printed as the program ships, with nothing in the person's own folder and nothing stood in for; a
test that changes anything of that prints its own.
"""

from __future__ import annotations

import io
from functools import cache
from typing import NamedTuple

from pypdf import PdfReader

from jobsheet.paths import sample_jobs
from jobsheet.report.blocks import Document
from jobsheet.sheet.pages import fits_on
from jobsheet.sheet.pdf import make_pdf
from jobsheet.storage.job_file import read_job
from tests.report.plans import pages


class Printed(NamedTuple):
    """What was put on paper, and the file."""

    document: Document
    data: bytes


@cache
def sample(name: str, paper: str = "a4") -> Printed:
    """A sample's sheet as `jobsheet sheet` makes it on a day, with its own file inside."""
    path = sample_jobs() / f"{name}.yaml"
    document = pages(
        read_job(path),
        fits=fits_on(paper),
        source=path.read_bytes(),
        name=name,
        printed_on="2026-11-29",
    )
    return Printed(document, make_pdf((document,), paper))


@cache
def texts(name: str, paper: str = "a4") -> tuple[str, ...]:
    """The words of each of its pages, read back by another library."""
    return tuple(page.extract_text() for page in PdfReader(io.BytesIO(sample(name, paper).data)).pages)
