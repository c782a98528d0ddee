from __future__ import annotations

import re

import pytest
from msgspec.structs import replace

from jobsheet.drawing.drawn import Text
from jobsheet.model.lying import lying, stock_box
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import Picture, Steps, Table, words_of
from jobsheet.report.job_sheet import job_sheet
from jobsheet.report.wording import FOOT
from jobsheet.review.notes.notes import notes_for
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_writing import write_job
from tests.report.plans import bench, drill, job, pages, plate

from .pages_read import FOUR, all_of, text

# --- what HM-100 promises: the figures of the demo scenario, section 3b -------------------------------------


def test_the_points_of_the_plate_are_whole_turns_and_the_line_to_stop_at():
    table = next(table for table in all_of(pages(plate()), Table) if table.columns[0].caption == "point")
    rows = [[(cell.text, cell.small) for cell in row] for row in table.rows]
    assert rows[0][0][0] == "0"
    assert [row[0][0] for row in rows[1:]] == ["1", "2", "3", "4"]
    assert rows[1][1:] == [
        ("14", ()),
        ("5 + 75", ()),
        ("12", ()),
        ("4 + 100", ()),
    ]
    assert rows[2][2] == ("26 + 50", ())
    assert rows[3][4] == ("15 + 25", ())


def test_limits_are_two_figures_with_a_blank_and_a_gauge_has_a_box():
    rows = [row for steps in all_of(pages(plate()), Steps) for step in steps.rows for row in step.measures]
    assert [(row.what, row.low, row.high) for row in rows if row.low] == [("11.5 ±0.1", "11.4", "11.6")]
    assert [(row.step, row.boxes) for row in rows if row.boxes][1:] == [("70", ("goes in",))]
    # And what is felt for once the work is clamped stands at the step that clamps it.
    assert rows[0].boxes == ("work seated and tight; parallels tight after tapping down",)
    assert "found ___ take ___ more, set head by all of it ___" in [row.again for row in rows]


# --- order, pages -------------------------------------------------------------------------------------------


def test_pages_are_numbered_through():
    document = pages(plate(), working=True)
    assert [page.number for page in document.pages] == list(range(1, len(document.pages) + 1))
    assert {page.total for page in document.pages} == {len(document.pages)}


# --- dials --------------------------------------------------------------------------------------------------


def test_an_inch_job_has_its_limits_and_sizes_in_inches():
    steps = [
        bench(10).replace("Break the edges", "Measure") + "        measure: 1.500 ±0.002\n",
        drill(20, [(0.5, 0.5)], cutter="drill 1/4 in"),
    ]
    document = pages(job(steps, units="in", machine="bench-mill-b-2", stock=("3-1/8", "2", "1/2")))
    row = all_of(document, Steps)[0].rows[0].measures[0]
    assert (row.low, row.high) == ("1.498", "1.502")
    assert "3-1/8 × 2 × 1/2" in "\n".join(words_of(tuple(page.title for page in document.pages)))


# --- how it lies --------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("up", "operator", "left", "far"),
    [
        ("top", "front", "left", "rear"),
        ("top", "rear", "right", "front"),
        ("bottom", "front", "right", "rear"),
        ("front", "bottom", "left", "top"),
        ("right", "front", "top", "rear"),
    ],
)
def test_the_stock_lies_as_it_was_turned(up, operator, left, far):
    plan = job([], up=up, operator=operator)
    lie = lying(plan.set_ups[0], stock_box(plan))
    assert (lie.up, lie.near, lie.left, lie.far) == (up, operator, left, far)


def test_the_letters_stand_where_the_faces_are_now():
    # HM-100 is turned round: its front (A) lies at the far, fixed jaw and its left end (B) to the right.
    zero = next(
        picture for picture in all_of(pages(plate()), Picture) if picture.title == "Zero, from above"
    ).drawing
    letters = {item.words: (item.x, item.y) for item in zero.items if isinstance(item, Text)}
    assert letters["A"][1] < letters["B"][1]
    assert letters["B"][0] > letters["1"][0] > letters["2"][0]
    assert letters["4"][1] > letters["1"][1]


def test_the_table_goes_against_the_way_that_the_work_counts():
    assert "X: table to your right. Y: table away from you." in text(pages(plate()))


# --- safety -------------------------------------------------------------------------------------------------


def test_at_most_three_lines_stand_beside_a_step_and_two_of_them_are_cautions():
    """At most three beside a step (sequencing rules, section 3)."""
    rows = [row for steps in all_of(pages(plate()), Steps) for row in steps.rows]
    assert max(len(row.notes) for row in rows) == 3
    assert max(sum(1 for note in row.notes if note.sign) for row in rows) == 2


def test_a_trainee_may_run_each_set_up_only_after_initials():
    document = pages(job([bench(10)], [bench(20)], trainee=True))
    assert document.open_stops == ("trainee-with-permission",)
    for page in document.pages:
        if page.kind == "set-up":
            assert any("person in charge has checked it and put initials here" in line for line in page.foot)
            assert [one.text for one in page.band.causes] == [
                "Not to be run until instructed and permitted by the person in charge."
            ]


def test_every_page_defers():
    assert all(FOOT in " ".join(page.foot) for page in pages(plate(), working=True).pages)
    assert FOOT == (
        "Planning aid only. Follow the machine’s manual, your workshop’s rules and the law where you work;"
        " where they differ from this sheet, they win."
    )


def test_no_word_promises_what_a_sheet_cannot():
    plan = plate()
    typed = write_job(plan)
    for word in re.findall(r"[A-Za-z]+", text(pages(plan, working=True))):
        assert (
            word.casefold() not in {"safe", "approved", "guaranteed", "verified", "proven"} or word in typed
        )


# --- texts --------------------------------------------------------------------------------------------------


def test_the_job_itself_goes_with_its_pages():
    assert pages(plate()).source.decode() == write_job(plate())
    assert pages(plate(), source=b"as it is").source == b"as it is"


def test_the_foot_names_what_the_workshop_chose_where_the_trade_disagrees():
    """Sequencing rules, section 4: a workshop changes a choice once, the sheet's foot says so."""
    from jobsheet.model.shop import Shop

    plan = plate()
    assert not any("choices" in line for page in pages(plan).pages for line in page.foot)
    reckoned = Reckoner(Shop(climb_milling="light finish", spot_angle="any spot")).reckon(plan)
    document = job_sheet(plan, reckoned, notes_for(plan, reckoned), (), find_card(plan.machine))
    said = "This workshop’s choices: spot angle, any spot; climb milling, light finish."
    assert all(said in page.foot for page in document.pages if page.kind in ("cover", "set-up"))


@pytest.mark.parametrize(("material", "there"), [("S235", False), ("EN-GJL-250", True), ("Ti-6Al-4V", True)])
def test_a_material_with_special_risk_says_to_read_its_data_sheet(material, there):
    """Safety notes, section 1: beside a material with special risk."""
    plan = replace(job([drill(10, FOUR)]), material=material)
    assert ("Read the supplier’s safety data sheet before cutting." in text(pages(plan))) is there


def test_a_trainee_s_job_says_what_young_workers_need():
    said = "Young or new workers need induction and closer supervision"
    assert said in text(pages(job([drill(10, FOUR)], trainee=True)))
    assert said not in text(pages(job([drill(10, FOUR)])))
