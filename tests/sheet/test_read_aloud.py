"""What a program that reads a PDF aloud finds: title, language, bookmarks, and the words in the
order in which a person reads them.
"""

from __future__ import annotations

import io
import re

import pytest
from pypdf import PdfReader

from jobsheet.model.prints import PRINTS, prints
from jobsheet.paths import sample_jobs
from jobsheet.sheet.pages import fits_on
from jobsheet.sheet.pdf import make_pdf
from jobsheet.storage.job_file import read_job
from tests.report.plans import pages
from tests.sheet import printed_once

SAMPLES = sorted(sample_jobs().glob("*.yaml"))


def read(path, paper="a4", **options):
    document = pages(read_job(path), fits=fits_on(paper), **options)
    return document, PdfReader(io.BytesIO(make_pdf((document,), paper)))


def flat(page) -> str:
    return re.sub(r"\s+", " ", page.extract_text())


def test_title_and_language_are_said_and_the_title_is_shown():
    _, reader = read(SAMPLES[0])
    root = reader.trailer["/Root"]
    assert root["/Lang"] == "en"
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert reader.metadata.title == "HM-100 Drilled plate, set-up sheets"


@pytest.mark.parametrize("name", PRINTS)
def test_every_kind_of_page_has_its_bookmark(name):
    document, reader = read(SAMPLES[0], wanted=prints((name,)))
    _, inside = reader.outline
    entries = [entry for entry in inside if not isinstance(entry, list)]
    assert len(entries) == len(document.pages)
    assert all(entry["/Title"].strip() for entry in entries)
    places = [reader.get_destination_page_number(entry) for entry in entries]
    assert places == sorted(places)


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_steps_come_in_their_order_between_head_and_end_of_their_page(path, paper):
    document = printed_once.sample(path.stem, paper).document
    for page, words_of_page in zip(document.pages, printed_once.texts(path.stem, paper), strict=True):
        text = re.sub(r"\s+", " ", words_of_page)
        rows = [
            row for block in page.blocks for row in getattr(block, "rows", ()) if hasattr(row, "spindle_note")
        ]
        if not rows:
            continue
        at = text.index(page.title[0][0].text)
        for row in rows:
            words = re.sub(r"\s+", " ", f"{row.number} {row.do}")
            place = text.find(words, at)
            if place < 0:  # a number and its words may be parted by the box of a stop note
                place = text.index(re.sub(r"\s+", " ", row.do), at)
            assert place >= at, words
            for figure in (row.spindle, row.pace, row.depth):
                assert text.find(figure, place) >= place
            at = place
        assert text.index("Planning aid only") > at


def test_the_parts_of_a_set_up_are_read_in_the_order_of_the_hands():
    """Stop notes, what the page is, the holding, boxes to tick, positions, steps, what happened, the foot."""
    name = next(path.stem for path in SAMPLES if "102" in path.stem)
    text = next(re.sub(r"\s+", " ", text) for text in printed_once.texts(name) if "3 of 4" in text)
    order = [
        "3 of 4",
        "You stand",
        "held in",
        "Before cutting",
        "Positions",
        "turns + line",
        "30 Mill",
        "Planning aid only",
    ]
    places = [text.index(word) for word in order]
    assert places == sorted(places)
