"""What words of older files become: how a cut is done, what a bench step changes and measures with, what the header says."""

from __future__ import annotations

import pytest

from jobsheet.operations import manners
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.words.bench_words import deeds, holding_changed, instrument
from jobsheet.storage.words.cut_words import allowance, general_limits, how, stands_on


@pytest.mark.parametrize(
    ("kind", "words", "manner"),
    [
        ("face", "measure before unclamping; break the edges", manners.MEASURED),
        ("face", "spring pass at the same dial", manners.SPRING),
        ("face", "slow entry", manners.SLOWLY),
        ("pocket", "leave four tabs", manners.TABS),
        ("pocket", "stop short and leave a skin", manners.SKIN_LEFT),
        ("side-mill", "rear side from the high side", manners.HIGH_SIDE),
        ("side-mill", "the screw reverses: back off half a turn and come up again", manners.TAKEN_UP),
        ("drill", "in the drill jig", manners.BUSH),
        ("drill", "20 to the point", manners.TO_THE_TIP),
        ("drill", "drills out the slot", manners.ON_PURPOSE),
        ("drill", "counted from hole 1", manners.FROM_A_HOLE),
        ("hand-tap", "back off each turn, oil", manners.OILED),
        ("pick-up-edge", "by the indicator", manners.INDICATOR),
    ],
)
def test_a_manner_is_known_by_its_words(kind, words, manner):
    assert manner in how(kind, words)


def test_a_depth_to_the_point_that_says_both_is_no_question():
    assert manners.TO_THE_TIP not in how("drill", "20 to the full diameter, 22 to the point")


def test_a_bench_step_has_no_manner_and_nobody_knows_a_strange_kind():
    assert how("bench-step", "measure with the micrometer") == ()
    assert how("no-such-kind", "measure with the micrometer") == ()


@pytest.mark.parametrize(
    ("words", "facts"),
    [
        ("Screw through the four holes, one at a time; then take the straps off", {"removes": "straps", "stays": "screws", "one at a time": "yes"}),
        ("Take the straps off, then screw through the holes", {"removes": "straps", "stays": "screws", "one at a time": "no"}),
        ("Take all the straps off", {"removes": "straps"}),
        ("Move the clamps out of the path, one at a time", {"removes": "straps", "stays": "straps", "one at a time": "yes"}),
        ("Wipe the table", {}),
    ],
)  # fmt: skip
def test_what_comes_off_and_what_goes_on_holding(words, facts):
    assert holding_changed(words) == facts


@pytest.mark.parametrize(
    ("words", "deed"),
    [
        ("Stamp the number on the top", "mark"),
        ("Mark out the holes", "mark out"),
        ("Tilt the head to 45°", "tilt head"),
        ("Raise the head for the drill", "move head"),
        ("Let it rest overnight", "cool"),
        ("Saw off 26 mm at the rear", "saw"),
        ("Check the vice with an indicator", "check vice"),
        ("Break all edges 0.3", "deburr"),
    ],
)
def test_a_deed_is_known_by_its_words(words, deed):
    assert deed in deeds(words)


def test_a_face_with_sawn_ends_is_not_sawn():
    assert "saw" not in deeds("Deburr the sawn ends")


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("Measure the slot, gauge 10.00/10.05", "gap gauge"),
        ("Go and no-go gauge", "plug gauge"),
        ("micrometer 25-50", "micrometer"),
        ("callipers, file", "caliper"),
        ("file", ""),
    ],
)
def test_an_instrument_is_known_by_its_words(words, name):
    assert instrument(words) == name


def test_what_is_left_on_for_later_work():
    assert allowance("hardened and ground, 0.3 mm left on") == "0.3 mm"
    assert allowance("hardened and ground") == ""
    assert allowance("plated, nothing left on for it") == "0"
    assert allowance("painted") == "0"


def test_general_limits_and_the_place_of_a_zero():
    assert general_limits("Dry. General limits ±0.1; deburr all", "") == "General limits ±0.1"
    assert general_limits("Dry.", "HM-9, ISO 2768-m") == "HM-9, ISO 2768-m"
    assert (stands_on("the bore, by indicator"), stands_on("hole 1"), stands_on("A and B")) == (
        "a bore",
        "another hole",
        "",
    )


OLD = """
format: 1
units: mm
part: {number: X-1, later: hardened}
material: S235
machine: bench-mill-b-1
note: General limits ±0.1. Mineral oil only.
stock: {length: 80, width: 50, height: 12}
set-ups:
  - key: one
    number: 1
    title: in the drill jig
    holding: {device: 80 mm vice, packing: "two 6 mm parallels, at the left end of the jaws", note: against an angle plate}
    zero: {named: centre of the bore}
    operations:
      - {key: d, number: 10, kind: drill, cutter: drill 5, at: [[10, 10]], depth: through, feed: "0.1", note: plugged}
      - {key: b, number: 20, kind: bench-step, what: "Measure the hole, plug gauge"}
"""


def test_a_whole_file_says_its_words_as_facts_and_keeps_them():
    job = job_from_text(OLD, "old")
    (set_up,) = job.set_ups
    drill, bench = (one.fields for one in set_up.operations)
    assert (set_up.holding.sits, set_up.holding.supported_by, set_up.zero.stands_on) == (
        "left end",
        "angle plate",
        "a bore",
    )
    assert set(drill.how.items) == {manners.PLUGGED, manners.BUSH}
    assert drill.note == "plugged"
    assert (bench.does.items, bench.instrument) == (("measure",), "plug gauge")
    assert (job.part.allowance, job.part.general_limits, job.fluid_is) == (
        None,
        "General limits ±0.1",
        "mineral oil",
    )
