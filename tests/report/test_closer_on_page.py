"""What crowds on a set-up's picture stands larger on its page, and is framed where it was taken from."""

from __future__ import annotations

from jobsheet.drawing.drawn import Text
from jobsheet.report.blocks import Columns, Picture, words_of
from jobsheet.report.closer_on_page import closer_on, larger_pictures
from jobsheet.report.set_up_head import WIDE, head
from tests.report.closer_jobs import comb, plan_of
from tests.report.plans import pages, plate
from tests.report.seen_from_above import plan_of as plan_for

HIGH = 96.0


def marks(blocks):
    """Every word of every picture."""
    for block in blocks:
        parts = block.parts if isinstance(block, Columns) else ((block,),)
        for picture in (each for part in parts for each in part if isinstance(each, Picture)):
            yield from (item.words for item in picture.drawing.items if isinstance(item, Text))


def test_a_part_without_crowds_has_none():
    plan = plan_for(plate())
    assert larger_pictures(plan, plan.courses[0], WIDE, HIGH) == ()


def test_thin_walls_are_drawn_larger_under_the_pictures_and_framed_above():
    plan = plan_of()
    blocks = head(plan, plan.courses[0], small=False)
    said = list(marks(blocks))
    assert {"step 20", "step 30", "1.5"} <= set(said)
    assert said.count("a") == 1
    (picture,) = [block for block in blocks if isinstance(block, Picture)]
    assert picture.title == "Closer, a"
    assert "walls in mm" in picture.caption


def test_a_short_block_has_it_too():
    plan = plan_of()
    assert {"1.5", "a"} <= set(marks(head(plan, plan.courses[0], small=True)))


def test_every_number_stands_on_the_page_once():
    """The crowd of holes stands with the walls: what the one picture leaves out the other has."""
    plan = plan_of(holes=True)
    said = list(marks(head(plan, plan.courses[0], small=False)))
    assert [said.count(number) for number in "123"] == [1, 1, 1]
    assert {"a", "b"} <= set(said)
    letters = [view.numbers for view in closer_on(plan, plan.courses[0], WIDE, HIGH)]
    assert frozenset().union(*letters) == {1, 2, 3}


def test_two_pages_of_a_small_job_have_it():
    """And the whole sheet says nothing that could not be drawn."""
    document = pages(comb(holes=True))
    said = [word for page in document.pages for word in marks(page.blocks)]
    assert {"1.5", "step 20"} <= set(said)
    text = " ".join(words for page in document.pages for words in words_of(page.blocks))
    assert "could not be drawn" not in text
