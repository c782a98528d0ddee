"""A worksheet gives nothing away, and its key says everything; both fit their paper."""

from __future__ import annotations

from io import BytesIO

import pytest
from pypdf import PdfReader

from jobsheet.lessons.cutter_exercise import cutter_exercise
from jobsheet.lessons.figure_exercise import figure_exercise
from jobsheet.lessons.needed_order import needed_order
from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import words_of
from jobsheet.report.lesson.lesson_documents import lesson_documents
from jobsheet.sheet.pages import drawn, fits_on
from jobsheet.sheet.pdf import make_pdf
from jobsheet.storage.job_file import read_job

SEED = 987654321


@pytest.fixture
def pivot(samples):
    return Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml"))


def documents(reckoned, level=1, sheet=7, paper="a4"):
    return lesson_documents("order", reckoned, level, SEED, sheet, fits_on(paper), "Knee mill K-2")


@pytest.mark.parametrize("level", [1, 2, 3])
def test_the_worksheet_holds_no_order_no_reason_no_seed_and_no_file(pivot, level):
    worksheet, key = documents(pivot, level)
    raw = make_pdf((worksheet,))
    read = PdfReader(BytesIO(raw))
    text = " ".join(page.extract_text() for page in read.pages)
    everything = text + str(read.metadata) + str(read.outline) + " ".join(words_of(worksheet.pages))
    assert str(SEED) not in everything
    assert str(SEED).encode() not in raw
    assert not read.attachments
    assert b"EmbeddedFile" not in raw
    for one in needed_order(pivot).pairs:
        assert one.because not in everything
        assert one.title not in everything
    assert not [line for line in text.splitlines() if "hazard" in line or "scrap" in line]
    assert str(SEED) in " ".join(words_of(key.pages))


def test_the_worksheet_says_that_it_is_no_plan(pivot):
    worksheet, _ = documents(pivot)
    words = list(words_of(worksheet.pages))
    assert "An exercise, not a set-up sheet: do not cut from it." in words
    assert "Worksheet 7" in words
    assert not [one for one in words if "check code" in one or "signed" in one or "Name" in one]
    assert (
        PdfReader(BytesIO(make_pdf((worksheet,)))).metadata["/Subject"] == "An exercise, not for the machine"
    )


def test_the_key_has_every_pair_with_its_reason(pivot):
    # Which set-up a sheet asks hangs on every letter of the job: the one with the threads is looked for.
    sheet = next(
        one for one in range(1, 60) if order_exercise(pivot, 1, SEED, one).blocks[0].set_up.number == 5
    )
    _, key = documents(pivot, sheet=sheet)
    words = list(words_of(key.pages))
    assert "A long drill walks before it bites, and the hole is then where it should not be." in words
    assert "A tap cuts a thread, not a hole: without one it breaks." in words
    assert any(one.startswith("Free, never a mistake: ") for one in words)
    assert any(one.startswith("Better habit, never a mistake: ") for one in words)
    assert any("10 of them" in one for one in words)


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("level", [1, 2, 3])
def test_every_page_fits_its_paper(pivot, level, paper):
    for document in documents(pivot, level, paper=paper):
        assert [drawn(page, paper)[1] for page in document.pages] == [1.0] * len(document.pages)


def test_the_same_seed_gives_the_same_bytes(pivot):
    again = Reckoner().reckon(pivot.job)
    for one, other in zip(documents(pivot, 2), documents(again, 2), strict=True):
        assert make_pdf((one,)) == make_pdf((other,))
    assert make_pdf(documents(pivot, 2, sheet=8)[:1]) != make_pdf(documents(pivot, 2)[:1])


@pytest.mark.parametrize("kind", ["figures", "cutter"])
def test_no_worksheet_of_another_sort_gives_its_answers_away(pivot, kind):
    worksheet, key = lesson_documents(kind, pivot, 3, SEED, 2, fits_on("a4"), "Knee mill K-2")
    raw = make_pdf((worksheet,))
    read = PdfReader(BytesIO(raw))
    text = " ".join(" ".join(page.extract_text().split()) for page in read.pages)
    assert str(SEED).encode() not in raw
    assert str(SEED) not in text + str(read.metadata)
    assert not read.attachments
    answers = set()
    if kind == "figures":
        answers = {one.answer for one in figure_exercise(pivot, 3, SEED, 2).questions}
        answers |= {line for one in figure_exercise(pivot, 3, SEED, 2).questions for line in one.working}
    else:
        choices = [one for each in cutter_exercise(pivot, 3, SEED, 2).questions for one in each.choices]
        answers = {one.refused.words for one in choices if one.refused is not None}
    assert answers
    assert not [one for one in answers if one in text]
    said = " ".join(words_of(key.pages))
    assert all(one.rstrip(".") in said for one in answers)
