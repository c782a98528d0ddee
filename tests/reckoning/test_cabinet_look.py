"""What a job asks for, looked up: there, elsewhere, away, lacking; and what a field can be filled with."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.edit.commands import SetField
from jobsheet.model.own_tools import Cabinet, Thing
from jobsheet.reckoning.cabinet.cabinet_look import (
    ELSEWHERE,
    HAS,
    LACKS,
    NEAR,
    OUT,
    SILENT,
    asked_words,
    fits,
    look_through,
    look_up,
    of_the_step,
)
from jobsheet.reckoning.cabinet.cabinet_needs import Need, cutter_need, words_ask
from jobsheet.reckoning.cabinet.cabinet_picks import picks
from jobsheet.storage.cabinet_file import cabinet_for, cabinet_from_text, read_cabinet, shipped
from jobsheet.storage.job_file import read_job

from .cabinet_asked import CABINET, look, plate, sample_jobs_read


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
    job = SetField("drill", "cutter", "drill 5, in a drill chuck, drawer 3").apply(plate())
    assert _of(job, "drill chuck").status == HAS
    job = SetField("drill", "cutter", "drill 15.7, in a drill chuck").apply(plate())
    found = _of(job, "drill chuck")
    assert found.lacking
    assert "opens to 13 mm" in found.sentence
    job = SetField("drill", "cutter", "drill 5, in a collet").apply(plate())
    assert (_of(job, "collet").status, "lent" in _of(job, "collet").sentence) == (OUT, True)


def _of(job, words):
    return next(one for one in look_through(job, CABINET) if one.need.words == words)


@pytest.mark.parametrize("path", sample_jobs_read(), ids=lambda path: path.stem)
def test_the_invented_cabinet_has_all_that_the_samples_ask_for(path):
    job = read_job(path)
    cabinet = cabinet_for(job.workshop)
    assert cabinet is not None
    assert [one.sentence for one in look_through(job, cabinet) if one.status not in (HAS, SILENT)] == []


def test_of_a_section_that_is_left_out_nothing_is_said():
    thin = cabinet_from_text("format: 1\nbench:\n  - what: file\n    place: bench\n", "x")
    assert {one.status for one in look_through(plate(), thin)} == {HAS, SILENT}


def test_nothing_is_looked_up_twice_for_the_same_job_and_cabinet():
    job, cabinet = plate(), read_cabinet(shipped()[0])
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


def test_a_pick_is_found_in_its_place_again():
    job = plate()
    for name in ("face-rough", "drill", "spot", "tap"):
        _, operation = job.find(name)
        found = picks(job, operation, "cutter", CABINET)
        assert found
        for one in found:
            made = SetField(name, "cutter", one.text).apply(job)
            cutter = made.find(name)[1].fields.cutter
            assert look_up(cutter_need(cutter), CABINET).status == (OUT if one.away else HAS)


# --- just at a limit, and what is said ---


def thing(section, name, **more):
    return Thing(section=section, what=name, place="shelf 1", row=0, name=name, **more)


def asks(section, name, **more):
    return Need(section=section, words=name, name=name, **more)


@pytest.mark.parametrize(("off", "same"), [(0.0, True), (0.4e-6, True), (-0.4e-6, True), (0.6e-6, False), (-0.6e-6, False)])  # fmt: skip
def test_sizes_within_half_a_micrometre_are_one(off, same):
    """What a micrometer does not show any more."""
    assert (
        fits(asks("parallels", "parallels", size=6e-3), thing("parallels", "parallels", size=6e-3 + off))
        == same
    )
    assert (
        fits(asks("wrenches", "tap wrench", size=0.18), thing("wrenches", "tap wrench", size=0.18 + off))
        == same
    )
    assert (
        fits(
            asks("gauges", "slot gauge", low=10e-3, high=10.05e-3),
            thing("gauges", "slot gauge", low=10e-3 + off, high=10.05e-3),
        )
        == same
    )
    assert (
        fits(
            asks("gauges", "slot gauge", low=10e-3, high=10.05e-3),
            thing("gauges", "slot gauge", low=10e-3, high=10.05e-3 + off),
        )
        == same
    )


def test_a_size_that_nobody_wrote_is_none():
    assert not fits(asks("parallels", "parallels"), thing("parallels", "parallels"))
    assert not fits(asks("wrenches", "tap wrench", size=0.18), thing("wrenches", "die stock", size=0.18))
    assert not fits(
        asks("gauges", "slot gauge", low=1e-3, high=2e-3), thing("gauges", "slot gauge", low=1e-3)
    )
    assert not fits(asks("drills", "drill"), thing("drills", "drill"))


@pytest.mark.parametrize(
    ("line", "status"),
    [
        ("drill 13", HAS), ("drill 13.1", NEAR), ("drill 1", HAS), ("drill 0.9", NEAR),
        ("end mill 16, 4 teeth", HAS),  # of a shank nothing is known
    ],
)  # fmt: skip
def test_a_chuck_takes_what_lies_between_its_ends(line, status):
    cutter = read_cutter(line, "mm")
    assert look_up(asks("holders", "drill chuck", cutter=cutter), CABINET).status == status


def test_what_a_chuck_does_not_take_is_named_without_what_belongs_to_the_step():
    cutter = read_cutter("drill 15.7, HSS, in a drill chuck", "mm")
    found = look_up(asks("holders", "drill chuck", cutter=cutter), CABINET)
    assert found.sentence == "The drill chuck (shelf 3) opens to 13 mm: it does not take drill 15.7."
    assert [one.name for one in found.near] == ["drill chuck"]


@pytest.mark.parametrize(
    ("low", "high", "status"),
    [(0, 25, HAS), (0, 25.1, HAS), (10, 50, HAS), (0, 50.1, NEAR), (25, 50, HAS), (50.1, 60, NEAR)],
)
def test_measuring_tools_hold_a_range_alone_or_between_them(low, high, status):
    """Two micrometers, 0 to 25 and 25 to 50."""
    need = asks("gauges", "micrometer", low=low * 1e-3, high=high * 1e-3)
    assert look_up(need, CABINET).status == status


def test_between_two_ranges_there_must_be_no_gap():
    things = tuple(
        thing("gauges", "micrometer", low=low * 1e-3, high=high * 1e-3) for low, high in ((30, 50), (0, 25))
    )
    gap = Cabinet(name="c", sections=frozenset({"gauges"}), things=things)
    assert look_up(asks("gauges", "micrometer", low=0.0, high=0.05), gap).status == NEAR
    assert look_up(asks("gauges", "micrometer", low=0.031, high=0.05), gap).status == HAS


def test_of_drills_the_next_below_and_above_of_others_the_two_of_nearest_size():
    """Of 12.2 mm: 12 lies 0.2 off and 12.7 lies 0.5; the other 12 is at the grinder, and what is away is not the nearest."""
    assert [one.what for one in look("end mill 12.2, 4 teeth").near] == [
        "end mill 12 mm, 4 teeth, HSS",
        "end mill 1/2 in, 2 teeth, carbide",
    ]
    assert look("end mill 12.2, 4 teeth").sentence == (
        "The cabinet has no end mill 12.2, 4 teeth; nearest are end mill 12 mm (drawer 1 no. 1) and end mill 1/2 in (drawer 1 no. 3)."
    )
    assert (
        look("reamer 12 H7").sentence
        == "The cabinet has no reamer 12 H7; nearest is reamer 16 mm H7 (drawer 6 no. 1)."
    )
    assert look("tap M10").sentence == "The cabinet has no tap M10."


def test_what_lies_where_the_job_says_is_named_once():
    assert look("slitting saw 63 mm, drawer 2 no. 7").sentence == (
        "The cabinet has no slitting saw 63 mm; in drawer 2 no. 7 lies face mill 50 mm, 4 teeth, carbide."
    )
    # It is the nearest already.
    assert look("reamer 12 H7, drawer 6 no. 1").sentence == (
        "The cabinet has no reamer 12 H7; nearest is reamer 16 mm H7 (drawer 6 no. 1)."
    )
    # A drawer without a number holds many things.
    assert "lies" not in look("drill 5.7, drawer 3").sentence


@pytest.mark.parametrize(
    ("line", "asked", "kept"),
    [
        ("end mill 12, 4 teeth, 45 mm out, in a collet, drawer 1 no. 1", "end mill 12, 4 teeth", ("45 mm out", "in a collet")),
        ("drill 5", "drill 5", ()),
    ],
)  # fmt: skip
def test_the_tool_and_how_it_is_held_are_two_things(line, asked, kept):
    cutter = read_cutter(line, "mm")
    assert asked_words(cutter_need(cutter)) == asked
    assert of_the_step(cutter) == kept


def test_what_differs_behind_the_same_words_is_said():
    """`no spot drill 10 mm, 90°; nearest is spot drill 10 mm` would say nothing."""
    said = look("spot drill 10 mm, 120°").sentence
    assert said.endswith("nearest is spot drill 10 mm, 90° (drawer 3 no. 1).")


@pytest.mark.parametrize(("line", "status"), [("parallels 6 mm thick", HAS), ("parallels 10 mm thick", NEAR)])
def test_a_size_behind_the_parallels_is_asked_too(line, status):
    assert [look_up(need, CABINET).status for need in words_ask(line, "mm")] == [status]


def test_of_plain_things_one_that_is_there_is_taken():
    plain = Need(section="bench", words="tap wrench", name="tap wrench", plain=True)
    lent = Thing(
        section="wrenches", what="tap wrench 180 mm", place="drawer 5", row=0, name="tap wrench", out="lent"
    )
    there = Thing(section="wrenches", what="tap wrench 280 mm", place="drawer 5", row=1, name="tap wrench")
    assert (
        look_up(plain, Cabinet(name="here", sections=frozenset(("wrenches",)), things=(lent, there))).thing
        == there
    )
    assert (
        look_up(plain, Cabinet(name="here", sections=frozenset(("wrenches",)), things=(lent,))).status == OUT
    )
