"""Stops that nobody read stand in a band above every page until initials are given."""

from __future__ import annotations

from jobsheet.model.remark import Note
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import Steps
from jobsheet.report.job_sheet import job_sheet
from jobsheet.report.plan import Initials
from jobsheet.report.wording import STAMP
from jobsheet.review.notes.notes import Notes
from jobsheet.storage.card_files import find_card
from tests.report.plans import bench, drill, job, pages

from .pages_read import FOUR, all_of


def test_a_stop_that_nobody_read_stands_in_a_band_above_every_page_with_one_line_of_initials():
    document = pages(job([drill(10, FOUR), drill(20, FOUR)], stock=("80", "50", "4")))
    assert document.open_stops == ("back-thin-sheet-down",)
    assert {page.band.head for page in document.pages} == {STAMP}
    rows = [page.band.causes for page in document.pages if page.kind in ("cover", "set-up")]
    assert [[(one.number, one.where, one.asked, one.given) for one in some] for some in rows] == [
        [(1, "steps 10, 20", "operator", "")]
    ] * len(rows)
    assert [row.stops for steps in all_of(document, Steps) for row in steps.rows] == ["stop 1", "stop 1"]


def test_initials_are_printed_and_the_band_says_no_more_that_nobody_read_it():
    plan = job([drill(10, FOUR)], stock=("80", "50", "4"))
    given = (Initials(note="back-thin-sheet-down", by="R. B.", operation="drill-10", set_up="set-up-1"),)
    document = pages(plan, acknowledged=given)
    assert document.open_stops == ()
    assert {page.band.head for page in document.pages if page.band} == {""}
    assert [one.given for one in document.pages[0].band.causes] == ["R. B."]


def test_initials_for_one_step_are_not_initials_for_another():
    plan = job([drill(10, FOUR), drill(20, FOUR)], stock=("80", "50", "4"))
    given = (Initials(note="back-thin-sheet-down", by="R. B.", operation="drill-10", set_up="set-up-1"),)
    assert pages(plan, acknowledged=given).open_stops == ("back-thin-sheet-down",)


def test_a_stop_at_the_head_of_a_set_up_that_no_step_had_room_for_is_open_too():
    plan = job([bench(10)])
    reckoned = Reckoner().reckon(plan)
    note = Note(
        id="loose-piece-jams",
        level="stop",
        text="Hold it.",
        source="CP",
        initials="operator",
        set_up="set-up-1",
        operation="bench-10",
    )
    notes = Notes(sheet=(), set_ups={"set-up-1": (note,)}, steps={"bench-10": ()}, stops=())
    document = job_sheet(plan, reckoned, notes, (), find_card(plan.machine))
    assert document.open_stops == ("loose-piece-jams",)
    sheet = next(page for page in document.pages if page.kind == "set-up")
    assert [one.text for one in sheet.band.causes] == ["Hold it."]
