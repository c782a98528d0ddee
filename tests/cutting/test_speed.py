"""Speeds: points for the head, directions, refusals."""

from __future__ import annotations

from math import pi, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting.speed import cone_depth, cone_diameter, cutting_speed, speed_with_fluid, spindle_speed
from jobsheet.errors import CalcError


def test_a_circumference_of_one_metre_turns_once_for_each_metre():
    assert spindle_speed(cutting_speed=1.0, diameter=1 / pi) == pytest.approx(1.0)


@given(st.floats(1e-3, 10), st.floats(1e-4, 0.5))
def test_cutting_speed_turns_spindle_speed_round(speed, diameter):
    assert cutting_speed(spindle_speed(speed, diameter), diameter) == pytest.approx(speed)


def test_a_larger_cutter_turns_slower():
    assert spindle_speed(0.5, 20e-3) < spindle_speed(0.5, 10e-3)


@pytest.mark.parametrize("bad", [0, -1, float("nan"), float("inf")])
@pytest.mark.parametrize("name", ["cutting_speed", "diameter"])
def test_refuses_what_has_no_speed(name, bad):
    with pytest.raises(CalcError) as refusal:
        spindle_speed(**{"cutting_speed": 0.5, "diameter": 0.01, name: bad})
    assert refusal.value.name == name
    assert refusal.value.value is bad


def test_a_refusal_reads_like_a_sentence():
    with pytest.raises(CalcError, match=r"^cutting speed is 0; it must be above zero$"):
        spindle_speed(cutting_speed=0, diameter=0.01)


def test_a_ninety_degree_spot_is_twice_as_wide_as_deep():
    assert cone_diameter(3e-3, radians(90)) == pytest.approx(6e-3)


@pytest.mark.parametrize(("angle", "share"), [(90, 0.5), (120, 0.289), (142, 0.172)])
def test_spot_depth_for_a_diameter(angle, share):
    assert cone_depth(1.0, radians(angle)) == pytest.approx(share, abs=6e-4)


@given(st.floats(1e-4, 0.02), st.floats(0.2, 3.0), st.floats(0, 5e-3))
def test_cone_depth_turns_cone_diameter_round(depth, angle, tip):
    assert cone_depth(cone_diameter(depth, angle, tip), angle, tip) == pytest.approx(depth, rel=1e-6)


@pytest.mark.parametrize("diameter", [1e-3, 2e-3])
def test_a_cone_is_wider_than_its_tip(diameter):
    with pytest.raises(CalcError, match="larger than the tip"):
        cone_depth(diameter, 1.5, tip=2e-3)


def test_less_fluid_is_slower():
    assert speed_with_fluid(0.5, 0.7) == pytest.approx(0.35)
