"""The proving sheet: stop rule and safety box before the table; boxes only for a
print that somebody has read.
"""

from __future__ import annotations

import pytest

from jobsheet.model.trials import OUTCOMES
from jobsheet.reckoning.ladder.ladders import plan
from jobsheet.report.blocks import Box, RungRows, words_of
from jobsheet.report.proving_sheet import Initialled, proving_sheet
from jobsheet.report.wording import FOOT, STAMP
from jobsheet.sheet.pages import fits_on
from jobsheet.sheet.pdf import make_pdf

LADDERS = {
    "side": ("bench-mill-b-1", {"cutter": "end mill 12 mm, 4 teeth, 30 mm out, drawer 1 no. 4", "material": "S235"}),
    "slot": ("bench-mill-b-2", {"cutter": "slot drill 3/8 in, 1-1/4 in out", "material": "6082-T6", "units": "in"}),
    "face": ("knee-mill-k-2", {"cutter": "face mill 50 mm, 4 teeth, carbide, marked 12000 rpm", "material": "S235"}),
    "drill": ("bench-mill-b-1", {"cutter": "drill", "material": "S235"}),
    "tap": ("bench-mill-b-2", {"cutter": "tap, plug", "material": "C15", "units": "in"}),
}  # fmt: skip
READ = Initialled(operator="EM", second="T", in_charge="T")


def ladder(kind):
    machine, asking = LADDERS[kind]
    return plan(machine, kind=kind, trials=(), **asking)


def text(document) -> str:
    return "\n".join(words_of(document.pages[0].blocks))


def table(document) -> RungRows:
    return next(block for block in document.pages[0].blocks if isinstance(block, RungRows))


@pytest.mark.parametrize("kind", LADDERS)
@pytest.mark.parametrize("trainee", [False, True])
@pytest.mark.parametrize("initials", [READ, None])
@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_it_is_one_page_of_either_paper(kind, trainee, initials, paper):
    document = proving_sheet(
        ladder(kind),
        initials=initials,
        trainee=trainee,
        planned_by="Evening member",
        workshop="Harrowmoss Training Workshop",
    )
    (page,) = document.pages
    assert fits_on(paper)(page)
    assert make_pdf((document,), paper).startswith(b"%PDF")


@pytest.mark.parametrize("kind", LADDERS)
def test_the_stop_rule_and_the_box_stand_before_the_table(kind):
    document = proving_sheet(ladder(kind), initials=READ)
    kinds = [type(block) for block in document.pages[0].blocks]
    assert kinds[:2] == [Box, Box]
    assert kinds.index(RungRows) > 1
    words = text(document)
    for needed in (
        "Stop at the first of these",
        "second person is present",
        "scrap of the same metal",
        "face shield",
        "Hearing protection",
    ):
        assert needed.casefold() in words.casefold()
    assert FOOT in document.pages[0].foot


def test_a_rung_a_row_with_boxes_and_the_digits_of_the_outcomes():
    made = ladder("side")
    document = proving_sheet(made, initials=READ)
    rows = table(document)
    assert rows.results
    assert [row.size for row in rows.rows] == [rung.size.removesuffix(" mm") for rung in made.rungs]
    assert all(
        row.size_note == f"{rung.handle} {rung.dial}" and rung.dial[:4] in ("0 + ", "1 + ")
        for row, rung in zip(rows.rows, made.rungs, strict=True)
    )
    words = text(document)
    assert all(f"{digit} {word}" in words for digit, word in enumerate(OUTCOMES, 1))
    assert document.pages[0].band is None


def test_nobody_has_read_it():
    """Safety-notes section 3: NOT ACKNOWLEDGED, two blank places, and no place for results."""
    document = proving_sheet(ladder("side"))
    assert document.pages[0].band.head == STAMP
    assert not table(document).results
    assert set(document.open_stops) == {"proving-person-present", "proving-stop-rule"}
    one = proving_sheet(ladder("side"), initials=Initialled(operator="EM"))
    assert one.open_stops == ("proving-person-present",)


def test_a_learner_has_initials_at_each_rung():
    document = proving_sheet(ladder("side"), initials=READ, trainee=True)
    assert table(document).initials
    assert "initials for each rung" in text(document)
    assert proving_sheet(
        ladder("side"), initials=Initialled(operator="A", second="B"), trainee=True
    ).open_stops


def test_what_a_drill_and_a_tap_call_up_beside():
    assert "scrap wood below" in text(proving_sheet(ladder("drill"), initials=READ))
    assert "Stop when the spindle slows" in text(proving_sheet(ladder("tap"), initials=READ))
    assert "screws tight" in text(proving_sheet(ladder("face"), initials=READ))


def test_a_refused_ladder_prints_why_and_no_table():
    document = proving_sheet(
        plan("bench-mill-b-1", cutter="slot drill 10 mm", material="AZ31", kind="slot", trials=()),
        initials=READ,
    )
    assert document.pages[0].band.head == STAMP
    assert "No test cuts in magnesium" in text(document)
    assert not [block for block in document.pages[0].blocks if isinstance(block, RungRows)]
