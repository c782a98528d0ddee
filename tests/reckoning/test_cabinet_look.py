"""What a job asks for, looked up: there, elsewhere, away, lacking; and what a field can be filled with."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.edit.commands import SetField
from jobsheet.reckoning.cabinet.cabinet_look import (
    ELSEWHERE,
    HAS,
    LACKS,
    NEAR,
    OUT,
    SILENT,
    look_through,
    look_up,
)
from jobsheet.reckoning.cabinet.cabinet_needs import cutter_need, needs_of, words_ask
from jobsheet.reckoning.cabinet.cabinet_picks import picks
from jobsheet.storage.cabinet_file import cabinet_for, cabinet_from_text, read_cabinet, shipped
from jobsheet.storage.job_file import read_job

CABINET = cabinet_from_text(
    """format: 1
cutters:
  - {what: "end mill 12 mm, 4 teeth, HSS", place: drawer 1 no. 1}
  - {what: "end mill 12 mm, 4 teeth, HSS, flutes 50 mm", place: drawer 1 no. 2, out: at the grinder}
  - {what: "end mill 1/2 in, 2 teeth, carbide", place: drawer 1 no. 3}
  - {what: "face mill 50 mm, 4 teeth, carbide", place: drawer 2 no. 7}
drills:
  - {what: "drills 1 mm to 10 mm by 0.5 mm", place: drawer 3, missing: 7 mm}
  - {what: "drills A to Z", place: drawer 4}
  - {what: "spot drill 10 mm, 90°", place: drawer 3 no. 1}
taps:
  - {what: "taps M6, taper and plug", place: drawer 5}
  - {what: "taps M8x1, plug", place: drawer 5}
reamers:
  - {what: "reamer 16 mm H7, 6 edges", place: drawer 6 no. 1}
countersinks:
  - {what: "counterbore 11 mm, pilot 6.6 mm, 3 edges", place: drawer 6 no. 2}
finders:
  - {what: "edge finder, 0.200 in tip", place: drawer 7 no. 1}
holders:
  - {what: "drill chuck 1 mm to 13 mm", place: shelf 3}
  - {what: "collet chuck, collets 6 mm, 10 mm", place: shelf 3, out: lent}
parallels:
  - {what: "parallels 6 x 20 x 100 mm", place: shelf 1}
gauges:
  - {what: "micrometer 0 mm to 25 mm", place: shelf 2}
  - {what: "micrometer 25 mm to 50 mm", place: shelf 2}
  - {what: "plug gauge 16 mm H7", place: shelf 2}
  - {what: "slot gauge 10.00/10.05 mm", place: shelf 2}
wrenches:
  - {what: "tap wrench 180 mm", place: drawer 5}
""",
    "cabinet.yaml",
)


def look(line: str, units: str = "mm", **more):
    return look_up(cutter_need(read_cutter(line, units), **more), CABINET)


def word(text: str, units: str = "mm"):
    (need,) = words_ask(text, units)
    return look_up(need, CABINET)


@pytest.mark.parametrize(
    ("line", "status", "place"),
    [
        ("end mill 12, 4 teeth", HAS, "drawer 1 no. 1"),
        ("end mill 12, 4 teeth, 45 mm out, drawer 1 no. 1", HAS, "drawer 1 no. 1"),
        ("end mill 12, 4 teeth, drawer 1", HAS, "drawer 1 no. 1"),
        ("end mill 12, 4 teeth, DRAWER 1 No. 1", HAS, "drawer 1 no. 1"),
        ("end mill 12, 4 teeth, carbide", NEAR, None),
        ("end mill 12, 3 teeth", NEAR, None),
        ("end mill 12, 4 teeth, flutes 50", OUT, "drawer 1 no. 2"),
        ("end mill 12, 4 teeth, flutes 45", OUT, "drawer 1 no. 2"),
        ("end mill 12, 4 teeth, flutes 60", NEAR, None),
        ("end mill 12, 4 teeth, drawer 1 no. 2", OUT, "drawer 1 no. 2"),
        ("end mill 12, 4 teeth, drawer 2 no. 7", ELSEWHERE, "drawer 1 no. 1"),
        ("end mill 12.7, 2 teeth", HAS, "drawer 1 no. 3"),
        ("drill 6.5", HAS, "drawer 3"),
        ("drill 7", NEAR, None),
        ("drill 5.7", NEAR, None),
        # Letter E is 0.250 in, as a quarter of an inch is (ASME B94.11M).
        ("drill 1/4 in", HAS, "drawer 4"),
        ("drill 6.35", HAS, "drawer 4"),
        ("drill E", HAS, "drawer 4"),
        ("drill #7", NEAR, None),
        ("spot drill 10, 90°", HAS, "drawer 3 no. 1"),
        ("spot drill 10, 120°", NEAR, None),
        ("taps M6, taper and plug", HAS, "drawer 5"),
        ("tap M6, plug", HAS, "drawer 5"),
        ("taps M6, taper, plug and bottoming", NEAR, None),
        ("tap M8", NEAR, None),  # the fine one of the same diameter
        ("tap M10", LACKS, None),
        ("tap M8x1, plug", HAS, "drawer 5"),
        ("reamer 16 H7", HAS, "drawer 6 no. 1"),
        ("reamer 16 H8", NEAR, None),
        ("counterbore 11, pilot 6.6", HAS, "drawer 6 no. 2"),
        ("counterbore 11, pilot 5.5", NEAR, None),
        ("edge finder, 10 mm tip", NEAR, None),
        ("edge finder, 0.200 in tip", HAS, "drawer 7 no. 1"),
        ("slitting saw 63 mm", LACKS, None),
    ],
)
def test_a_cutter_is_looked_up(line, status, place):
    found = look(line)
    assert found.status == status, found.sentence
    assert (found.thing.place if found.thing else None) == place
    assert bool(found.sentence) == (status != HAS)
    assert found.lacking == (status in (NEAR, LACKS, OUT))


def test_of_drills_the_next_below_and_above_are_named_by_size_whatever_they_are_called():
    """Letter A is 0.234 in = 5.944 mm (ASME B94.11M), nearer above 5.7 than 6.0."""
    assert [one.what for one in look("drill 5.7").near] == ["drill 5.5 mm", "drill A"]
    assert look("drill 5.7").sentence == (
        "The cabinet has no drill 5.7; nearest are drill 5.5 mm (drawer 3) and drill A (drawer 4)."
    )


def test_what_lies_in_the_named_place_is_said():
    assert look("end mill 12, 4 teeth, drawer 2 no. 7").sentence == (
        "End mill 12, 4 teeth lies in drawer 1 no. 1, not in drawer 2 no. 7, where face mill 50 mm, 4 teeth, carbide lies."
    )
    assert look("end mill 12, 4 teeth, drawer 1 no. 2").sentence == (
        "End mill 12 mm (drawer 1 no. 2) is not there now: at the grinder; another one lies in drawer 1 no. 1."
    )


def test_the_styles_that_a_step_of_hand_tapping_uses_count():
    assert look("taps M6", taps="taper, plug").status == HAS
    assert look("taps M6", taps="taper, plug, bottoming").status == NEAR


@pytest.mark.parametrize(
    ("text", "status"),
    [
        ("two 6 mm parallels", HAS),
        ("4 mm parallels at the jaws", NEAR),
        ("parallels", HAS),
        ("micrometer 0-25", HAS),
        ("micrometer 0-50", HAS),
        ("micrometer 0-75", NEAR),
        ("plug gauge 16 H7", HAS),
        ("plug gauge 12 H7", NEAR),
        ("gauge 10.00/10.05", HAS),
        ("tap wrench 180 mm", HAS),
        ("tap wrench 280 mm", NEAR),
        ("file", SILENT),
        ("80 mm vice on the table", SILENT),
    ],
)
def test_words_with_a_size_are_looked_up_and_plain_ones_say_nothing(text, status):
    assert word(text).status == status


def test_sizes_of_words_are_in_the_units_of_the_job():
    assert word("two 1/4 parallels", "in").need.size == pytest.approx(0.00635)
    assert word("two 6 parallels", "mm").status == HAS


def test_holders():
    job = SetField("drill", "cutter", "drill 5, in a drill chuck, drawer 3").apply(_plate())
    assert _of(job, "drill chuck").status == HAS
    job = SetField("drill", "cutter", "drill 15.7, in a drill chuck").apply(_plate())
    found = _of(job, "drill chuck")
    assert found.lacking
    assert "opens to 13 mm" in found.sentence
    job = SetField("drill", "cutter", "drill 5, in a collet").apply(_plate())
    assert (_of(job, "collet").status, "lent" in _of(job, "collet").sentence) == (OUT, True)


def _of(job, words):
    return next(one for one in look_through(job, CABINET) if one.need.words == words)


def _plate():
    return read_job(_samples()[0])


def _samples():
    from jobsheet.paths import sample_jobs

    return sorted(sample_jobs().glob("*.yaml"))


@pytest.mark.parametrize("path", _samples(), ids=lambda path: path.stem)
def test_the_invented_cabinet_has_all_that_the_samples_ask_for(path):
    job = read_job(path)
    cabinet = cabinet_for(job.workshop)
    assert cabinet is not None
    assert [one.sentence for one in look_through(job, cabinet) if one.status not in (HAS, SILENT)] == []


def test_of_a_section_that_is_left_out_nothing_is_said():
    thin = cabinet_from_text("format: 1\nbench:\n  - what: file\n    place: bench\n", "x")
    assert {one.status for one in look_through(_plate(), thin)} == {HAS, SILENT}


def test_the_same_tool_is_asked_once_with_all_its_steps():
    needs = [one for one in needs_of(_plate()) if one.name == "face mill"]
    assert [one.operations for one in needs] == [("face-rough", "face-finish")]


def test_nothing_is_looked_up_twice_for_the_same_job_and_cabinet():
    job, cabinet = _plate(), read_cabinet(shipped()[0])
    first = look_through(job, cabinet)
    changed = SetField("drill", "feed", "0.09").apply(job)
    again = look_through(changed, cabinet)
    assert all(one is other for one, other in zip(first, again, strict=True))


@given(st.text(max_size=60))
def test_any_words_give_an_answer(text):
    for units in ("mm", "in"):
        for need in words_ask(text, units):
            assert look_up(need, CABINET).status in (HAS, NEAR, LACKS, OUT, ELSEWHERE, SILENT)


# --- picking ---


def test_every_pick_can_be_written_into_its_field():
    for path in _samples():
        job = read_job(path)
        for _, operation in job.operations():
            for one in picks(job, operation, "cutter", CABINET):
                SetField(operation.key, "cutter", one.text).apply(job)  # raises where it cannot be read


def test_a_pick_is_found_in_its_place_again():
    job = _plate()
    for name in ("face-rough", "drill", "spot", "tap"):
        _, operation = job.find(name)
        found = picks(job, operation, "cutter", CABINET)
        assert found
        for one in found:
            made = SetField(name, "cutter", one.text).apply(job)
            cutter = made.find(name)[1].fields.cutter
            assert look_up(cutter_need(cutter), CABINET).status == (OUT if one.away else HAS)


def test_a_drill_is_nearest_to_the_thread_s_own_and_the_kind_that_stands_there_goes_first():
    job = _plate()
    drills = [one.text for one in picks(job, job.find("drill")[1], "cutter", CABINET)]
    assert drills[0] == "drill 5 mm, drawer 3"  # M6: 6 - 1 (ISO 261)
    spots = [one.text for one in picks(job, job.find("spot")[1], "cutter", CABINET)]
    assert spots[0] == "spot drill 10 mm, 90°, drawer 3 no. 1"
    assert [one.text for one in picks(job, job.find("tap")[1], "cutter", CABINET)] == [
        "taps M6, taper and plug, drawer 5"
    ]
    assert picks(job, job.find("tap")[1], "note", CABINET) == ()
