"""Drilling: what a drill takes in a minute, what a hole before it takes off, and the hole that it leaves."""

from __future__ import annotations

import math

import pytest

from jobsheet.operations.kinds import drill
from tests.operations.hole_steps import Step, refusal

DRILL = {"cutter": "drill 10 mm", "depth": "through", "feed": "0.1", "spindle": "300 rpm"}
STEEL = {"material": "S235"}


def test_metal_in_a_minute_is_the_area_of_the_hole_times_its_feed():
    """π/4 × 10² × 0.1 × 300 = 2356 mm³/min, by hand."""
    step = Step("drill", DRILL, **STEEL)
    assert step.value("removal_rate") * 1e9 * 60 == pytest.approx(math.pi / 4 * 100 * 0.1 * 300)
    assert step.value("cutting_speed") * 60 == pytest.approx(math.pi * 0.010 * 300)


def test_power_is_torque_through_the_turns():
    step = Step("drill", DRILL, **STEEL)
    assert step.value("power") == pytest.approx(step.value("torque") * 2 * math.pi * 5)


def test_a_smaller_hole_before_it_takes_off_thrust_and_torque():
    solid, opened = Step("drill", DRILL, **STEEL), Step("drill", DRILL, pilot=5e-3, **STEEL)
    assert opened.value("thrust") < solid.value("thrust")
    assert opened.value("torque") < solid.value("torque")
    # What is left of a hole of 10 over one of 5: 1 − 0.5² of the metal.
    assert opened.value("removal_rate") == pytest.approx(0.75 * solid.value("removal_rate"))


def test_a_through_hole_has_no_end_and_a_blind_one_its_point():
    (through,) = Step("drill", DRILL, **STEEL).shapes
    assert (through.diameter, through.depth) == (pytest.approx(10e-3), None)
    (blind,) = Step("drill", {**DRILL, "depth": "8"}, **STEEL).shapes
    assert blind.depth is not None
    assert blind.depth <= 8e-3


def test_two_holes_take_twice_the_time_of_one():
    one, two = Step("drill", DRILL, **STEEL), Step("drill", {**DRILL, "at": "10, 10; 30, 10"}, **STEEL)
    assert two.value("cutting_time") == pytest.approx(2 * one.value("time_each"))
    assert len(two.shapes) == 2


def test_a_drill_without_a_size_or_a_feed_is_refused_in_words():
    assert "size" in refusal("drill", {**DRILL, "cutter": "drill"}, **STEEL)
    assert "feed per turn is empty" in refusal("drill", {**DRILL, "feed": ""}, **STEEL)


def test_a_quill_stops_at_the_tip_and_a_millimetre_further_through():
    """A point of 118° on 10 mm is 5 / tan 59° = 3.004 mm long: 12 + 3.004 + 1 and 8 + 3.004 mm."""
    point = 5e-3 / math.tan(math.radians(59))
    for depth, stop in (("through", 12e-3 + point + 1e-3), ("8", 8e-3 + point)):
        step = Step("drill", {**DRILL, "cutter": "drill 10 mm, 118°", "depth": depth}, **STEEL)
        assert drill._stop(step.fields, step.figures) == pytest.approx(stop, abs=0.5e-4)


def test_a_spot_drill_s_depth_is_to_its_tip():
    spot = {"cutter": "spot drill 10 mm, 90°", "depth": "3", "feed": "0.1", "spindle": "300 rpm"}
    step = Step("drill", spot, **STEEL)
    assert drill._stop(step.fields, step.figures) == pytest.approx(3e-3)
    assert "such as 3 mm" in refusal("drill", {**spot, "depth": "through"}, **STEEL)
