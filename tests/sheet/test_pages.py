"""Every page holds what stands on it: inside its margins, nothing on another, a stamp without initials."""

from __future__ import annotations

from functools import cache

import pytest

from jobsheet.report.blocks import Page
from jobsheet.sheet.fonts import printable, width
from jobsheet.sheet.pages import drawn, fits_on
from jobsheet.sheet.styles import PAPERS, STYLES
from tests.report.plans import bench, drill, job, pages, plate

from .pdf_read import pdf, read

FOUR = [(14, 12), (66, 12), (66, 38), (14, 38)]


MONSTER = "W" * 60


LONG = "a long text that goes on " * 70


HARD = (
    plate,
    lambda: job(
        [bench(10, LONG, LONG), bench(20, MONSTER, MONSTER * 8)],
        name=MONSTER,
        workshop=MONSTER,
        by=MONSTER,
        why=LONG,
        title=MONSTER,
    ),
    lambda: job([drill(n, FOUR) for n in range(10, 130, 10)]),
    lambda: job([drill(10, [(2 + 2.5 * x, 2 + 5 * y) for x in range(30) for y in range(3)])]),
    lambda: job(*[[bench(10 * n + 10)] for n in range(40)]),
    lambda: job([drill(10, FOUR)], trainee=True, stock=("80", "50", "4"), jaw="left"),
    lambda: job([drill(10, FOUR)], device="strap clamps", up="right", operator="top", jaw="right"),
    lambda: job(
        [drill(10, [(0.5, 0.5)], cutter="drill 1/4 in")],
        units="in",
        machine="bench-mill-b-2",
        stock=("3", "2", "1/2"),
    ),
    lambda: job([bench(10)], stock=("3000", "5", "0.5")),
)


@cache
def hard_pages(number: int, paper: str = "a4", *, working: bool = True):
    """Set out once for all that is asked of them."""
    return pages(HARD[number](), fits=fits_on(paper), working=working).pages


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("number", range(len(HARD)))
def test_every_page_has_room_for_what_it_holds(paper, number):
    for page in hard_pages(number, paper):
        assert drawn(page, paper)[1] == 1.0, (page.kind, page.number)


@pytest.mark.parametrize("number", range(len(HARD)))
def test_no_letter_stands_outside_the_margins(number):
    for page in hard_pages(number, working=False):
        picture, _ = drawn(page, "a4")
        for item in picture.items:
            if not hasattr(item, "words"):
                continue
            style = STYLES[item.style]
            wide = width(printable(item.words), item.size or style.size, bold=style.bold)
            left = item.x - {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor] * wide
            assert left >= -0.5, (page.kind, item)
            assert left + wide <= picture.width + 0.5, (page.kind, item)
            assert 0 <= item.y <= picture.height + 0.5, (page.kind, item)


def overlapping(page: Page) -> list[tuple[str, str]]:
    """Texts that stand on one another."""
    picture, _ = drawn(page, "a4")
    boxes = []
    for item in picture.items:
        if hasattr(item, "words") and item.words:
            style = STYLES[item.style]
            size = item.size or style.size
            wide = width(printable(item.words), size, bold=style.bold)
            left = item.x - {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor] * wide
            boxes.append(
                (left + 0.4, item.y - size * 0.7, left + wide - 0.4, item.y + size * 0.05, item.words)
            )
    boxes.sort(key=lambda one: one[1])
    found = []
    for index, (left, top, right, bottom, words) in enumerate(boxes):
        for other in boxes[index + 1 :]:
            if other[1] >= bottom:
                break
            if other[0] < right and other[2] > left and other[3] > top:
                found.append((words, other[4]))
    return found


@pytest.mark.parametrize("number", [0, 1, 2, 5, 6, 7])
def test_no_text_stands_on_another(number):
    for page in hard_pages(number):
        assert overlapping(page) == [], page.kind


def test_a_print_without_initials_is_stamped_on_every_page():
    reader = read(pdf(job([drill(10, FOUR)], stock=("80", "50", "4"))))
    assert all("NOT ACKNOWLEDGED" in page.extract_text() for page in reader.pages)
