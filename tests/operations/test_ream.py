"""Reaming; demo-scenario HM-103 operation 140."""

from __future__ import annotations

import pytest

from jobsheet.limits.each import cutting_speed
from tests.operations.hole_steps import Step, check, refusal

IRON = {"material": "EN-GJL-250", "fluid": "dry", "thickness": 0.050}
REAMER = {"cutter": "reamer 16 H7, 6 edges", "depth": "through"}


def test_hm103_operation_140():
    """190 rpm and 95 mm/min by the quill: half a millimetre a turn."""
    step = Step("ream", {**REAMER, "feed": "0.5", "spindle": "190 rpm"}, pilot=15.7e-3, **IRON)
    check(step, {
        "power": (40, 1, 0.5), "torque": (1.99, 1, 0.005), "share": (2, 1, 0.5), "down_feed": (95, 60e3, 0.5),
        "ream_stock": (0.30, 1e3, 0.005),
    })  # fmt: skip
    # The scenario prints no seconds: (50 + 0.3 × 16 + 1) mm at 95 mm/min.
    assert step.value("time_each") == pytest.approx(55.8 / 95 * 60, abs=0.01)


def test_the_feed_is_by_the_turn_by_the_edge_or_from_the_catalogue():
    asked = {**REAMER, "spindle": "190 rpm"}
    by_turn = Step("ream", {**asked, "feed": "0.36"}, pilot=15.7e-3, **IRON)
    by_edge = Step("ream", {**asked, "feed_per_edge": "0.06"}, pilot=15.7e-3, **IRON)
    assert by_edge.value("torque") == pytest.approx(by_turn.value("torque"))
    start = Step("ream", asked, pilot=15.7e-3, **IRON)
    assert start.value("feed_per_turn") * 1e3 == pytest.approx(
        0.381, abs=0.0005
    )  # 0.0025 in × 6, section 3.4
    assert "No feed is written" in start.caveats()


@pytest.mark.parametrize("fluid", ["flood", "brushed", "dry"])
@pytest.mark.parametrize("metal", ["S235", "304", "6061", "EN-GJL-250", "C360"])
def test_it_starts_at_half_of_its_drill_where_both_are_left_to_the_program(metal, fluid):
    """A government shop manual on reaming: half the drilling speed; the drill
    before it has the same fluid and depth.
    """
    around = {"material": metal, "fluid": fluid, "thickness": 0.04}
    drill = Step("drill", {"cutter": "drill 15.7", "depth": "through", "feed": "0.2"}, **around)
    reamer = Step("ream", {**REAMER, "feed": "0.5"}, pilot=15.7e-3, **around)
    assert reamer.value("wanted_speed") / drill.value("wanted_speed") == pytest.approx(
        0.5 * 15.7 / 16, rel=0.01
    )
    assert reamer.value("spindle_speed") <= drill.value("spindle_speed")


def test_too_fast_is_the_cutting_speeds_to_say():
    """25 m/min, and a reamer may run 55 ft/min, 17 m/min, in grey iron (cutting-data section 2.2)."""
    step = Step("ream", {**REAMER, "feed": "0.5", "spindle": "500 rpm"}, pilot=15.7e-3, **IRON)
    found = cutting_speed.limit(step.figures, step.setting, step.fields)
    assert (found.verdict, found.share) == ("tight", pytest.approx(25.13 / 17, rel=0.02))
    assert "loses its edge" in found.sentence
    assert step.caveats() == ""


@pytest.mark.parametrize(
    ("hole", "says"),
    [(15.9e-3, "it rubs with less"), (15.0e-3, "drill or bore nearer to size"), (15.7e-3, "")],
)
def test_the_stock_is_held_against_the_table(hole, says):
    """For 7.1 to 22.4 mm: 0.25 to 0.41 mm on the diameter (section 3.4)."""
    caveats = Step("ream", {**REAMER, "feed": "0.5", "spindle": "190 rpm"}, pilot=hole, **IRON).caveats()
    assert says in caveats
    assert ("left on the diameter" in caveats) == bool(says)


def test_words_gauge_and_hole():
    texts = {**REAMER, "feed": "0.5", "at": "grid of 2 × 2 from 10, 10, step 20 × 20"}
    step = Step("ream", texts, pilot=15.7e-3, **IRON)
    assert step.row.do == "Ream 4 holes 16 H7, through"
    assert step.row.measure == "16 H7 gauge"
    assert {hole.diameter for hole in step.holes} == {16e-3}
    assert float(step.row.depth) == pytest.approx(52)  # its lead must come out below


def test_six_edges_are_taken_and_said_where_none_are_written():
    six = Step("ream", {**REAMER, "feed": "0.5"}, pilot=15.7e-3, **IRON)
    none = Step("ream", {"cutter": "reamer 16 H7", "depth": "through", "feed": "0.5"}, pilot=15.7e-3, **IRON)
    assert none.value("torque") == six.value("torque")
    assert "not written: 6 are taken" in none.caveats()


def test_what_has_no_meaning_says_what_to_write():
    assert "drilled at these places before" in refusal("ream", {**REAMER, "feed": "0.5"}, **IRON)
    both = refusal("ream", {**REAMER, "feed": "0.5", "feed_per_edge": "0.06", "hole": "15.7"}, **IRON)
    assert both == "feed an edge is “0.06”; it must be left empty where the feed per turn is written"
    same = refusal("ream", {**REAMER, "feed": "0.5", "hole": "16"}, **IRON)
    assert same == "hole is 16 mm; it must be smaller than what is cut, 16 mm"
