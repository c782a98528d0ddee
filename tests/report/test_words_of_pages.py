"""Words of the pages at their moment: ticks, what is cut short, hazards that were set aside, places
with a tolerance; over all samples.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.model.job import Dismissed
from jobsheet.report.blocks import Columns, NoteLine, Steps, Ticks, words_of
from jobsheet.sheet.pages import fits_on
from jobsheet.storage.job_file import read_job
from tests.report.plans import bench, drill, job, pages


def blocks_of(blocks):
    for block in blocks:
        yield block
        if isinstance(block, Columns):
            for part in block.parts:
                yield from blocks_of(part)


def test_no_text_of_a_page_ends_in_three_dots(sample):
    for paper in ("a4", "letter"):
        document = pages(sample, fits=fits_on(paper))
        for page in document.pages:
            said = words_of((page.title, page.blocks, page.band, page.foot, page.legend))
            assert not [words for words in said if words.rstrip(" .").endswith(("…", ".."))]


HAZARD = "grip-deep-enough"


@pytest.mark.parametrize("about", ["operation", "set-up"])
@pytest.mark.parametrize("steps", [1, 14])
def test_a_hazard_set_aside_stands_at_its_step_and_on_the_cover_with_reason_and_initials(about, steps):
    work = job([*(bench(10 * n) for n in range(1, steps)), drill(500, [(10, 10)])])
    (set_up,) = work.set_ups
    key = set_up.operations[-1].key if about == "operation" else set_up.key
    aside = Dismissed(rule=HAZARD, about=key, reason="held by hand and looked at twice", initials="QX")
    document = pages(replace(work, dismissed=(aside,)), fits=fits_on("a4"))
    cover = list(words_of(document.pages[0].blocks))
    assert any("held by hand and looked at twice (QX)" in words for words in cover)
    rows = [
        row
        for page in document.pages
        for block in blocks_of(page.blocks)
        if isinstance(block, Steps)
        for row in block.rows
    ]
    number = str(set_up.operations[-1 if about == "operation" else 0].number)
    noted = [row for row in rows if any("(QX)" in note.text for note in row.notes)]
    assert [row.number for row in noted] == [number]
    assert any(isinstance(note, NoteLine) and note.sign == "hazard" for note in noted[0].notes)


def test_a_place_with_a_tolerance_is_measured_once_after_the_last_cut_there(samples):
    """Demo scenario, HM-103: the two threads within 0.1, the bore within 0.05; spotted,
    drilled, tapped or reamed, then measured.
    """
    document = pages(read_job(samples / "hm-103-pivot-block.yaml"), fits=fits_on("a4"))
    boxes = {
        row.number: [box for one in row.measures for box in one.boxes if "in place" in box]
        for page in document.pages
        for block in blocks_of(page.blocks)
        if isinstance(block, Steps)
        for row in block.rows
    }
    # The bore is spotted within 0.05 and reamed last, at 145.
    told = {number: one for number, one in boxes.items() if one}
    assert told == {"90": ["points 1, 2 in place, ±0.1 mm"], "145": ["point 1 in place, ±0.05 mm"]}


def test_boxes_that_are_ticked_before_the_first_cut_stand_once(sample):
    document = pages(sample, fits=fits_on("a4"))
    once = [
        words
        for page in document.pages
        for block in blocks_of(page.blocks)
        if isinstance(block, Ticks)
        for words in block.items
        if words in ("eye protection on", "every tool fetched")
    ]
    assert len(once) == len(set(once))


def test_squareness_that_a_step_asks_has_a_box(samples):
    """HM-103, step 25: the second side square to A within 0.05."""
    document = pages(read_job(samples / "hm-103-pivot-block.yaml"), fits=fits_on("a4"))
    (boxes,) = [
        [box for one in row.measures for box in one.boxes]
        for page in document.pages
        for block in blocks_of(page.blocks)
        if isinstance(block, Steps)
        for row in block.rows
        if row.number == "25"
    ]
    assert boxes == ["square within 0.05 mm"]
