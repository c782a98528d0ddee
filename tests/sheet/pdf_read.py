"""A plan as the bytes of its sheets, and what a reader of the file finds in them."""

from __future__ import annotations

import io
import re

from pypdf import PdfReader

from jobsheet.sheet.pages import fits_on
from jobsheet.sheet.pdf import make_pdf
from tests.report.plans import pages


def pdf(plan, paper="a4", **options) -> bytes:
    return make_pdf((pages(plan, fits=fits_on(paper), **options),), paper)


def read(data: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(data))


def text(data: bytes) -> str:
    return "\n".join(page.extract_text() for page in read(data).pages)


def squeezed(words: str) -> str:
    return re.sub(r"\s+", "", words)
