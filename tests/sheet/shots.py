"""Photographs made up, and jobs that have them."""

from __future__ import annotations

import io
from hashlib import sha256

from msgspec.structs import replace
from pypdf import PdfReader

from jobsheet.model.job import Photograph
from jobsheet.sheet.pages import fits_on
from jobsheet.sheet.pdf import make_pdf
from jobsheet.storage.photos.kept_photographs import Shot
from tests.report.plans import pages


def shot(raw, about="top-up", shows="the stop", width=640, height=480):
    content = sha256(raw).hexdigest()
    return Shot(
        photograph=Photograph(content=content, shows=shows, about=about),
        raw=raw,
        kind="jpg",
        width=width,
        height=height,
    )


def with_shots(plan, *shots, paper="a4"):
    plan = replace(plan, photographs=tuple(one.photograph for one in shots))
    document = pages(plan, fits=fits_on(paper), shots=shots)
    return document, PdfReader(io.BytesIO(make_pdf((document,), paper)))
