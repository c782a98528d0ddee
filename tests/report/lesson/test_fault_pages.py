"""A sheet with planted mistakes is headed so on every page, and holds neither the answer nor anything
by which it could pass for a plan.
"""

from __future__ import annotations

from io import BytesIO

import pytest
from pypdf import PdfReader

from jobsheet.lessons.fault_exercise import fault_exercise
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import words_of
from jobsheet.report.lesson.exercise_page import PLANTED
from jobsheet.report.lesson.lesson_documents import lesson_documents
from jobsheet.sheet.pages import drawn, fits_on
from jobsheet.sheet.pdf import make_pdf
from jobsheet.storage.job_file import read_job

SEED = 987654321


@pytest.mark.parametrize(("kind", "level"), [("wrong", 1), ("wrong", 4), ("missing", 2)])
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_sheet_with_planted_mistakes(samples, kind, level, paper):
    pivot = Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml"))
    worksheet, key = lesson_documents(kind, pivot, level, SEED, 3, fits_on(paper), "Knee mill K-2")
    raw = make_pdf((worksheet,), paper)
    read = PdfReader(BytesIO(raw))
    for page in read.pages:
        assert PLANTED in page.extract_text()
    everything = " ".join(page.extract_text() for page in read.pages) + str(read.metadata) + str(read.outline)
    everything += " ".join(words_of(worksheet.pages))
    exercise = fault_exercise(pivot, level, SEED, 3, missing=kind == "missing")
    for one in exercise.faults:
        assert one.title not in everything
        assert one.remark.why not in everything
        assert one.remark.message not in everything
        assert one.remark.message in " ".join(words_of(key.pages))
    assert str(SEED).encode() not in raw
    assert str(SEED) not in everything
    assert not read.attachments
    for mark in ("check code", "checked by", "Checked by", "signed", "JS1:"):
        assert mark not in everything
    for document in (worksheet, key):
        assert [drawn(page, paper)[1] for page in document.pages] == [1.0] * len(document.pages)
