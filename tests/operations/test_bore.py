"""Boring with one edge: Kienzle's force at a chip as thick as the feed, at half of the diameter."""

from __future__ import annotations

import math

import pytest

from jobsheet.catalog.metals.materials import find
from tests.operations.hole_steps import Step, refusal

BORE = {"cutter": "boring bar 16 mm, 50 mm out", "to": "30 H7", "depth": "through", "hole": "25", "feed": "0.1", "spindle": "300 rpm"}  # fmt: skip
STEEL = {"material": "S235", "thickness": 0.03}


def _force(width, feed, wear=1.1):
    """Specific force times the chip's area [N], reckoned here by itself."""
    steel = find("S235")
    return steel.kc11.value * (feed * 1e3) ** -steel.mc.value * wear * width * feed


def test_torque_is_the_force_at_the_middle_of_the_chip():
    step = Step("bore", {**BORE, "cut": "2.5"}, **STEEL)  # two cuts, 1.25 mm a side, the second ends at 30
    arm = (30e-3 - 1.25e-3) / 2
    assert step.value("torque") == pytest.approx(_force(1.25e-3, 0.1e-3) * arm, rel=1e-9)
    assert step.value("power") == pytest.approx(step.value("torque") * 2 * math.pi * 300 / 60)


def test_power_is_removal_times_specific_force():
    """An independent way to the same number: cutting-data section 1.5, Pc = Q kc."""
    step = Step("bore", {**BORE, "cut": "2.5"}, **STEEL)
    assert step.value("power") == pytest.approx(step.value("removal_rate") * step.value("specific_force"))


def test_passes_are_on_the_diameter_with_a_last_one():
    step = Step("bore", {**BORE, "cut": "1.5", "leave": "0.4"}, **STEEL)
    assert step.value("passes") == 5  # 4.6 mm in four of 1.15, then 0.4
    assert step.value("cut_on_diameter") == pytest.approx(1.15e-3)
    assert "4 cuts of 1.15 mm on the diameter, last 0.4" in step.row.note
    assert step.value("cutting_time") == pytest.approx(5 * step.value("time_each"))
    assert step.value("time_each") == pytest.approx(31 / 30 * 60)  # 30 mm and 1 before it, at 30 mm/min


def test_an_entering_angle_thins_the_chip_and_raises_the_specific_force():
    square, slanted = Step("bore", BORE, **STEEL), Step("bore", {**BORE, "angle": "45°"}, **STEEL)
    assert slanted.value("chip_thickness") == pytest.approx(0.1e-3 * math.sin(math.pi / 4))
    assert slanted.value("torque") > square.value("torque")


def test_a_smaller_cut_asks_less():
    assert Step("bore", {**BORE, "cut": "1"}, **STEEL).value("torque") < Step("bore", BORE, **STEEL).value(
        "torque"
    )


def test_by_the_fine_feed_a_handle_is_wound_by_the_lever_seconds_are_kept():
    fine, lever = Step("bore", BORE, **STEEL), Step("bore", {**BORE, "by": "lever"}, **STEEL)
    assert fine.value("handle_pace") * 60 == pytest.approx(30 / 2.54)  # the knee: 0.100 in a turn
    assert fine.row.pace_unit == "s a turn, knee"
    assert lever.figures.get("handle_pace") is None
    assert lever.row.pace_unit == "s to depth"


def test_the_bar_gives_way_as_a_beam():
    step = Step("bore", {**BORE, "cut": "2.5"}, **STEEL)
    stiffness = 3 * 207e9 * math.pi * 16e-3**4 / 64 / 50e-3**3
    assert step.value("bar_spring") == pytest.approx(_force(1.25e-3, 0.1e-3) / stiffness)
    long = Step("bore", {**BORE, "cutter": "boring bar 16 mm, 100 mm out"}, **STEEL)
    assert "likely to chatter" in long.caveats()
    assert "more than 0.05 mm" in long.caveats()


def test_words_measure_and_hole():
    step = Step("bore", BORE, pilot=20e-3, **STEEL)
    assert step.row.do == "Bore one hole 30 H7, through"
    assert step.row.measure == "30 H7"
    assert step.value("pilot") == pytest.approx(25e-3)  # what was typed stands before what was drilled
    assert [hole.diameter for hole in step.holes] == [30e-3]


def test_what_has_no_meaning_says_what_to_write():
    none = {name: text for name, text in BORE.items() if name != "hole"}
    assert "drilled at these places before" in refusal("bore", none, **STEEL)
    assert "smaller than what is cut, 30 mm" in refusal("bore", {**BORE, "hole": "30"}, **STEEL)
    last = refusal("bore", {**BORE, "leave": "5"}, **STEEL)
    assert last == "last cut on the diameter is “5”; it must be less than all there is to take, 5 mm"
    thick = refusal("bore", {**BORE, "cutter": "boring bar 32 mm, 50 mm out"}, **STEEL)
    assert thick.endswith("thinner than the bore; write the size of the bar")
