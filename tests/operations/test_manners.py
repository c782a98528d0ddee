"""How a cut is done, known by the words of older files."""

from __future__ import annotations

import pytest

from jobsheet.operations import manners
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.words.cut_words import how


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
