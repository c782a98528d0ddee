"""A plan of very many points, of many set-ups with much still open, of nothing at all: no
thicket, no page of next to nothing.
"""

from __future__ import annotations

import re

from jobsheet.paths import sample_jobs
from jobsheet.report.blocks import Columns, Picture, words_of
from jobsheet.sheet.pages import fits_on
from jobsheet.storage.job_file import job_from_text
from tests.report.plans import pages

PLATE = (sample_jobs() / "hm-100-drilled-plate-b1.yaml").read_text(encoding="utf-8")
FOUR = re.compile(
    r"          - \[14, 12\]\n          - \[66, 12\]\n          - \[66, 38\]\n          - \[14, 38\]\n"
)


def made(text: str):
    return pages(job_from_text(text, "plate"), fits=fits_on("a4")).pages


def test_sixty_holes_have_their_numbers_once_on_the_first_card():
    holes = "".join(f"          - [{4 + 8 * (at % 10)}, {5 + 8 * (at // 10)}]\n" for at in range(60))
    small = (
        FOUR.sub(holes, PLATE)
        .replace("drill 5.0", "drill 2.5")
        .replace("spot drill 10 mm", "spot drill 4 mm")
    )
    cards = [page for page in made(small.replace("M6", "M3")) if page.kind == "positions"]
    drawn = [
        [one for block in card.blocks if isinstance(block, Columns) for part in block.parts for one in part]
        for card in cards
    ]
    assert [len(some) for some in drawn] == [1, *(0 for _ in cards[1:])]
    assert isinstance(drawn[0][0], Picture)
    numbers = [words for words in words_of(drawn[0][0].drawing) if words.isdigit()]
    assert sorted(map(int, numbers)) == list(range(1, 61))
    assert not [words for words in words_of(drawn[0][0].drawing) if "detail" in words]
    told = [words for card in cards for words in words_of(card.blocks)]
    assert all(told.count(str(number)) >= 1 for number in range(1, 61))


def test_a_plan_of_nothing_is_its_cover():
    (cover,) = made(PLATE[: PLATE.index("set-ups:")])
    said = list(words_of(cover.blocks))
    assert "None is planned yet." in said
    assert "No step names a tool yet." in said
    assert "Before the first cut" not in said
