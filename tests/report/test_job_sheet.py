from __future__ import annotations

import re

import pytest
from msgspec.structs import replace

from jobsheet.drawing.drawn import Text
from jobsheet.model.lying import lying, stock_box
from jobsheet.model.remark import Note
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import Column, Columns, Picture, Steps, Table, words_of
from jobsheet.report.heed.safety import first_sentence
from jobsheet.report.job_sheet import job_sheet
from jobsheet.report.plan import Initials
from jobsheet.report.wording import FOOT, STAMP
from jobsheet.review.notes.notes import Notes, notes_for
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_writing import write_job
from tests.report.plans import bench, drill, job, pages, plate

FOUR = [(14, 12), (66, 12), (66, 38), (14, 38)]


def text(document, kind: str | None = None) -> str:
    return "\n".join(words_of(tuple(page.blocks for page in document.pages if kind in (None, page.kind))))


def titles(document) -> list[str]:
    return [f"{row[1].caption}: {row[1].text}" for page in document.pages for row in page.title[:1]]


def found(block, wanted):
    if isinstance(block, wanted):
        yield block
    for name in ("blocks", "parts"):
        for inner in getattr(block, name, ()):
            for one in inner if isinstance(inner, tuple) else (inner,):
                yield from found(one, wanted)


def all_of(document, wanted):
    return [one for page in document.pages for block in page.blocks for one in found(block, wanted)]


# --- what HM-100 promises: the figures of the demo scenario, section 3b ------------------------------------------


@pytest.mark.parametrize(
    ("number", "spindle", "pace", "depth"),
    [
        ("20", "560", "1.3", "0.4"),
        ("30", "560", "1.7", "0.1"),
        ("50", "900", "8", "3.2"),
        ("60", "900", "15", "14"),
        ("40", "900", "", ""),
    ],
)
def test_a_step_of_the_plate_says_what_is_set_at_the_machine(number, spindle, pace, depth):
    rows = {row.number: row for steps in all_of(pages(plate()), Steps) for row in steps.rows}
    row = rows[number]
    assert (row.spindle, row.pace, row.depth) == (spindle, pace, depth)


def test_the_step_that_is_tapped_by_hand_has_its_spindle_stopped():
    rows = {row.number: row for steps in all_of(pages(plate()), Steps) for row in steps.rows}
    assert (rows["70"].spindle, rows["70"].pace, rows["70"].depth) == ("stopped", "by hand", "through")


def test_the_share_stands_with_its_verdict_and_with_what_governs():
    rows = {row.number: row for steps in all_of(pages(plate()), Steps) for row in steps.rows}
    # 1.81 N·m of 4.73 at 900 rpm: 38 % of the torque.
    assert (rows["50"].verdict, rows["50"].share, rows["50"].governs) == (
        "expected",
        "38 %",
        "spindle torque",
    )


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


def test_steps_name_the_points_they_go_to():
    rows = {row.number: row for steps in all_of(pages(plate()), Steps) for row in steps.rows}
    assert rows["60"].note.startswith("points 1–4;")


def test_the_cover_lists_cutters_in_the_order_of_the_drawers():
    table = next(table for table in all_of(pages(plate()), Table) if table.columns[0].caption == "got")
    assert [(row[1].text, row[2].text) for row in table.rows] == [
        ("2", "7"),
        ("3", ""),
        ("3", "1"),
        ("5", ""),
        ("6", "2"),
    ]


def test_the_cover_says_minutes_to_set_by_hand_and_in_the_cut():
    table = next(table for table in all_of(pages(plate()), Table) if table.columns[0].caption == "done")
    # 20 to set; 5 + 5 + 8 by hand, 5 tools at 2 min and one size at 1.5; 2 x 70 s, 2 x 87 s, 4 x 8 s and 4 x 15 s are about 7.
    assert table.rows[0][-1].text == "20 + 30 + 7"


def test_things_of_the_steps_that_lie_on_the_bench_are_fetched_too():
    assert "file" in text(pages(plate()), "cover")


# --- order, pages ------------------------------------------------------------------------------------------------


def test_eleven_steps_go_on_a_second_sheet_with_holding_and_zero_repeated():
    document = pages(job([bench(10 * n) for n in range(1, 12)]))
    assert [title for title in titles(document) if title.startswith("Set-up")] == [
        "Set-up: 1 of 1 · Top up, sheet 1 of 2",
        "Set-up: 1 of 1 · Top up, sheet 2 of 2",
    ]
    first, second = (page for page in document.pages if page.kind == "set-up")
    # The second has hold and zero again without heads of their own: the words beside them say what they are.
    for page, heads in ((first, ["Hold", "Zero, from above", "After this set-up"]), (second, ["", ""])):
        assert [picture.title for block in page.blocks for picture in found(block, Picture)] == heads
    assert "Go on to sheet 2: do not unclamp." in "\n".join(words_of(first.blocks))
    assert "What happened" not in "\n".join(words_of(first.blocks))
    again = "\n".join(words_of(second.blocks))
    assert "step 80: same holding, same zero" in again
    assert "80 mm vice" in again
    assert "What happened" in again


def test_ten_steps_stand_on_one_sheet():
    document = pages(job([bench(10 * n) for n in range(1, 11)]))
    assert len([page for page in document.pages if page.kind == "set-up"]) == 1


def test_no_page_has_more_than_ten_steps_and_every_step_stands_on_one():
    document = pages(job([bench(10 * n) for n in range(1, 38)]))
    counts = [len(steps.rows) for steps in all_of(document, Steps)]
    assert max(counts) <= 10
    assert sum(counts) == 37


def test_a_hole_is_not_parted_from_its_chain_where_half_a_page_stays():
    steps = [bench(10 * n) for n in range(1, 10)] + [drill(100, FOUR[:1]), drill(110, FOUR[:1]), bench(120)]
    document = pages(job(steps))
    assert [row.number for row in all_of(document, Steps)[1].rows] == ["100", "110", "120"]


def test_more_than_six_points_get_a_card_and_the_steps_say_so():
    places = [(10 + 10 * n, 10) for n in range(7)]
    document = pages(job([drill(10, places)]))
    card = next(page for page in document.pages if page.kind == "positions")
    table = next(one for block in card.blocks for one in found(block, Table))
    assert [row[0].text for row in table.rows] == list("01234567")
    assert table.columns[-1] == Column(caption="10", tick=True)
    assert "points 1–7, card" in text(document, "set-up")
    assert "28 + 0.00" not in text(document, "set-up")


def test_six_points_stay_on_the_sheet():
    document = pages(job([drill(10, [(10 + 10 * n, 10) for n in range(6)])]))
    assert [page.kind for page in document.pages if page.kind == "positions"] == []


def test_pages_are_numbered_through():
    document = pages(plate(), working=True)
    assert [page.number for page in document.pages] == list(range(1, len(document.pages) + 1))
    assert {page.total for page in document.pages} == {len(document.pages)}


def test_a_job_without_set_ups_or_steps_still_has_a_cover():
    assert pages(job()).pages[0].kind == "cover"
    assert pages(job([])).pages[0].kind == "cover"


# --- dials -------------------------------------------------------------------------------------------------------


def test_an_inch_dial_on_a_metric_job_says_how_far_the_line_is_off_in_millimetres():
    # Demo scenario, section 9: 30.5 mm on K-2 is 6 turns + .0008, line 1, +0.005 mm.
    document = pages(job([drill(10, [(30.5, 10)])], machine="knee-mill-k-2", stock=("104", "64", "12")))
    table = next(table for table in all_of(document, Table) if table.columns[0].caption == "point")
    assert (table.rows[1][2].text, table.rows[1][2].small) == ("6 + 1", ("+0.005 mm",))


def test_a_place_before_the_zero_counts_the_dial_the_same_way():
    # 5 mm below zero on 2.5 mm a turn is two whole turns; 6 mm is three turns below and 1.5 up again.
    document = pages(job([drill(10, [(-5, 10), (-6, 10)])]))
    table = next(table for table in all_of(document, Table) if table.columns[0].caption == "point")
    assert [row[2].text for row in table.rows[1:]] == ["−2 + 0", "−3 + 75"]


def test_an_inch_job_has_its_limits_and_sizes_in_inches():
    steps = [
        bench(10).replace("Break the edges", "Measure") + "        measure: 1.500 ±0.002\n",
        drill(20, [(0.5, 0.5)], cutter="drill 1/4 in"),
    ]
    document = pages(job(steps, units="in", machine="bench-mill-b-2", stock=("3-1/8", "2", "1/2")))
    row = all_of(document, Steps)[0].rows[0].measures[0]
    assert (row.low, row.high) == ("1.498", "1.502")
    assert "3-1/8 × 2 × 1/2" in "\n".join(words_of(tuple(page.title for page in document.pages)))


# --- how it lies -------------------------------------------------------------------------------------------------


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


# --- safety ------------------------------------------------------------------------------------------------------


def every_note(plan) -> set[str]:
    notes = notes_for(plan, Reckoner().reckon(plan))
    whole = [
        *notes.sheet,
        *notes.stops,
        *(note for some in (*notes.set_ups.values(), *notes.steps.values()) for note in some),
    ]
    return {note.text.replace("*", "") for note in whole}


@pytest.mark.parametrize("fits", [lambda _page: True, lambda page: len(page.blocks) < 3])
def test_no_stop_and_no_caution_of_a_step_is_dropped_and_what_is_left_out_is_counted(fits):
    """At most 24 lines beside those at their steps: more are no longer read. The rest stay in the window and in `why`."""
    for plan in (plate(), job([drill(10, FOUR)], trainee=True, stock=("80", "50", "4"))):
        document = pages(plan, fits=fits)
        whole = "\n".join(words_of(tuple((page.band, page.blocks) for page in document.pages)))
        notes = notes_for(plan, Reckoner().reckon(plan))
        beside = [*notes.stops, *(note for some in notes.steps.values() for note in some)]
        assert [note.id for note in beside if first_sentence(note.text.replace("*", "")) not in whole] == []
        left = [note for note in every_note(plan) if note not in whole]
        said = re.search(r"(\d+) more of a general kind", whole)
        assert len(left) <= int(said[1]) if said else not left


def test_at_most_three_lines_stand_beside_a_step_and_two_of_them_are_cautions():
    """At most three beside a step (sequencing rules, section 3)."""
    rows = [row for steps in all_of(pages(plate()), Steps) for row in steps.rows]
    assert max(len(row.notes) for row in rows) == 3
    assert max(sum(1 for note in row.notes if note.sign) for row in rows) == 2


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


def test_hazards_and_verdicts_beyond_stand_on_the_cover():
    plan = job([drill(10, [(200, 12)], cutter="drill 25 mm, drawer 3")])
    cover = text(pages(plan), "cover")
    assert "Still open in this plan" in cover
    assert re.search(r"Step 10, hazard: .*outside", cover)
    assert re.search(r"Step 10, beyond: ", cover)


def test_a_good_plan_has_nothing_open():
    assert "Still open" not in text(pages(plate()))


def test_no_word_promises_what_a_sheet_cannot():
    plan = plate()
    typed = write_job(plan)
    for word in re.findall(r"[A-Za-z]+", text(pages(plan, working=True))):
        assert (
            word.casefold() not in {"safe", "approved", "guaranteed", "verified", "proven"} or word in typed
        )


# --- texts -------------------------------------------------------------------------------------------------------


def test_a_long_text_is_cut_on_the_step_and_stands_in_full_at_the_end():
    whole = " ".join(f"word{n}" for n in range(300))
    document = pages(job([bench(10, "Clamp", whole[:1900])]))
    assert document.pages[-1].kind == "long"
    last = " ".join(words_of(document.pages[-1].blocks))
    assert whole[:1900] in last
    row = all_of(document, Steps)[0].rows[0]
    # A footnote's sign: a text never ends in dots that tell nobody where the rest is.
    assert row.note.endswith("*")
    assert len(row.note) < 1000
    assert "* Step 10, note" in last


def test_short_texts_need_no_page_of_their_own():
    assert "long" not in [page.kind for page in pages(plate()).pages]


def test_the_working_shows_formula_numbers_result_and_source():
    whole = text(pages(plate(), working=True), "working")
    assert "v_f = f_z z n" in whole
    assert "f_z = 0.05 mm" in whole
    # 0.05 x 4 x 560 = 112 mm/min
    assert "v_f = 112 mm/min" in whole
    # The source by its title; who makes tools is not named on a sheet.
    assert "Mitsubishi Materials, Formulas for milling and turning" in whole


def test_the_job_itself_goes_with_its_pages():
    assert pages(plate()).source.decode() == write_job(plate())
    assert pages(plate(), source=b"as it is").source == b"as it is"


def test_columns_share_their_width():
    for columns in all_of(pages(plate()), Columns):
        assert sum(columns.shares) == pytest.approx(1.0)


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
