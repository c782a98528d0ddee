"""Proof on the PDF itself, read by another library: sizes of type, boxes inside their pages, nothing
lost however much there is, tones.
"""

from __future__ import annotations

import io
import itertools
import re
from functools import cache

import numpy as np
import pytest
from pypdf import PdfReader

from jobsheet.drawing.mark_shapes import MARKS, mark
from jobsheet.report.blocks import Columns, Steps, Table, words_of
from jobsheet.sheet.fonts import printable
from jobsheet.sheet.pages import fits_on
from jobsheet.sheet.pdf import make_pdf, picture_pdf
from jobsheet.sheet.styles import INKS, PAPERS
from jobsheet.storage.job_file import read_job
from jobsheet.storage.job_writing import write_job
from jobsheet.storage.pdf_jobs import job_text
from tests.report.plans import bench, drill, job, pages
from tests.sheet import printed_once
from tests.sheet.on_paper import Paper, sizes_of

SAMPLES = (
    "hm-100-drilled-plate-b1", "hm-100-drilled-plate-b2", "hm-100-drilled-plate-k2", "hm-101-setting-block", "hm-102-slide-plate",
    "hm-103-pivot-block", "hm-104-cover-plate",
)  # fmt: skip
LETTERS = "long word " * 20
UNBROKEN = "W" * 200


def grid(count):
    return [(2.0 + 5 * (index % 15), 3.0 + 6 * (index // 15)) for index in range(count)]


#: Jobs with far more of everything than a page has room for, and one with nothing.
FULL = {
    "long names": lambda: job(
        [bench(10, LETTERS, LETTERS), drill(20, [(10, 10)])], name=LETTERS, workshop=LETTERS, by=LETTERS, why=LETTERS, title=LETTERS, number=LETTERS
    ),
    "unbroken names": lambda: job([bench(10, UNBROKEN, UNBROKEN)], name=UNBROKEN, workshop=UNBROKEN, by=UNBROKEN, why=UNBROKEN, title=UNBROKEN),
    "30 steps": lambda: job([drill(number, [(10, 10), (60, 40)]) for number in range(10, 310, 10)]),
    "60 holes": lambda: job([drill(10, grid(60), cutter="drill 2.0, drawer 3"), drill(20, grid(60))]),
    "12 set-ups": lambda: job(*[[drill(10 * number, [(10, 10 + number)])] for number in range(1, 13)]),
    "no step": lambda: job([]),
}  # fmt: skip


@cache
def printed(name, paper):
    document = pages(FULL[name](), fits=fits_on(paper))
    return document, Paper(make_pdf((document,), paper))


@cache
def sample(name, paper):
    document, data = printed_once.sample(name, paper)
    return document, Paper(data), data


def blocks_of(blocks):
    for block in blocks:
        yield block
        if isinstance(block, Columns):
            for part in block.parts:
                yield from blocks_of(part)


def squeezed(words):
    return re.sub(r"\s+", "", printable(words))


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", FULL)
def test_nothing_is_lost_however_much_there_is(name, paper):
    """Each word of the neutral pages is found on the page that it belongs to,
    and each whole text somewhere.
    """
    document, read = printed(name, paper)
    assert len(read) == len(document.pages)
    for page in document.pages:
        found = "".join(letter.sign for letter in read.letters(page.number - 1))
        rows = [block for block in blocks_of(page.blocks) if isinstance(block, (Steps, Table))]
        told = squeezed(" ".join(words_of(tuple(rows))))
        # Lines are broken and columns interleave: figures are counted, and each single word is sought.
        assert all(found.count(sign) >= told.count(sign) for sign in "0123456789+"), page.kind
        for words in words_of((page.title, page.blocks)):
            for word in words.split():
                if len(word) <= 12 and word.isalnum():
                    assert squeezed(word) in found, (page.number, word)


@pytest.mark.parametrize("name", ["long names", "unbroken names"])
def test_a_text_that_is_cut_short_stands_in_full_at_the_end(name):
    _, read = printed(name, "a4")
    whole = "".join(letter.sign for index in range(len(read)) for letter in read.letters(index))
    assert squeezed(LETTERS if name == "long names" else UNBROKEN) in whole


@pytest.mark.parametrize(
    ("name", "numbers"), [("30 steps", range(10, 310, 10)), ("12 set-ups", range(10, 130, 10))]
)
def test_every_step_stands_on_a_page_once(name, numbers):
    document, _ = printed(name, "a4")
    rows = [
        row.number
        for page in document.pages
        for block in blocks_of(page.blocks)
        if isinstance(block, Steps)
        for row in block.rows
    ]
    assert rows == [str(number) for number in numbers]


def test_every_hole_has_its_row_of_readings():
    document, _ = printed("60 holes", "a4")
    numbers = [
        row[0].text
        for page in document.pages if page.kind == "positions"
        for block in blocks_of(page.blocks) if isinstance(block, Table) and any("turns" in one.caption for one in block.columns)
        for row in block.rows
    ]  # fmt: skip
    assert {str(number) for number in range(61)} == set(numbers)


def measured(read, paper):
    width, height = PAPERS[paper]
    for index in range(len(read)):
        assert read.size(index) == pytest.approx((width, height), abs=0.1)
        for letter in read.letters(index):
            assert letter.left >= -0.1, letter
            assert letter.right <= width + 0.1, letter
            assert letter.low >= -0.1, letter
            assert letter.high <= height + 0.1, letter
            assert letter.size >= 7.49, letter


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", FULL)
def test_every_letter_stands_inside_its_page_and_none_is_smaller_than_seven_and_a_half_points(name, paper):
    measured(printed(name, paper)[1], paper)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", SAMPLES)
def test_sizes_of_type_on_the_samples_pages(name, paper):
    """Issue 17: smallest type 7.5 pt, what is dialled at least 14, what a step does at least 11."""
    document, read, _ = sample(name, paper)
    measured(read, paper)
    dialled = steps = 0
    for page in document.pages:
        letters = read.letters(page.number - 1)
        for block in blocks_of(page.blocks):
            readings: list[str] = []
            if isinstance(block, Steps):
                for row in block.rows:
                    readings += [one for dials in row.dials for one in dials.readings]
                    first = row.do.split()[0]
                    assert max(sizes_of(first, letters)) >= 11, row.do
                    steps += 1
            elif isinstance(block, Table):
                at = [index for index, column in enumerate(block.columns) if "turns" in column.caption]
                readings += [row[index].text for row in block.rows for index in at]
            for reading in readings:
                assert max(sizes_of(reading, letters), default=0) >= 14, reading
                dialled += 1
    assert dialled
    assert steps


@pytest.mark.parametrize("name", SAMPLES)
def test_pages_are_drawn_in_black_and_one_grey(name):
    """Look, second part: nothing but black and 77 % black on paper; a copier keeps both. Asked of
    the strokes and fills in the file.
    """
    tones = set()
    for page in PdfReader(io.BytesIO(sample(name, "a4")[2])).pages:
        drawn = page.get_contents().get_data().decode("latin-1")
        strokes = re.sub(r"\((?:\\.|[^\\)])*\)", "", drawn)  # without what is written
        assert not re.search(r"(?<![\w.])(rg|RG|k|K|sc|SC|scn|SCN)(?![\w.])", strokes)
        tones |= {float(tone) for tone in re.findall(r"(?<![\w.])([\d.]+) [gG](?![\w.])", strokes)}
    assert tones <= {INKS["ink"], INKS["pencil"], INKS["paper"]}


def test_signs_are_told_apart_on_a_grey_copy():
    """Each two signs differ over at least a tenth of the ink of the darker one, printed small, in
    grey, at the 200 dots of a copier.
    """
    pictures = {}
    for name in MARKS:
        picture = Paper(picture_pdf(mark(name, 9.5), name)).grey(0, 200)
        pictures[name] = 255 - picture.astype(float)
    for (one, first), (other, second) in itertools.combinations(pictures.items(), 2):
        apart = np.abs(first - second).sum() / max(first.sum(), second.sum())
        assert apart > 0.1, (one, other)


@pytest.mark.parametrize("name", SAMPLES)
def test_the_job_inside_is_the_file_byte_for_byte_and_opens_as_the_same_plan(samples, name, tmp_path):
    source = (samples / f"{name}.yaml").read_bytes()
    path = tmp_path / "sheet.pdf"
    path.write_bytes(printed_once.sample(name).data)
    assert PdfReader(path).attachments[f"{name}.yaml"] == [source]
    assert job_text(path).encode() == source
    assert write_job(read_job(path)) == write_job(read_job(samples / f"{name}.yaml"))
