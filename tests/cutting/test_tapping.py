"""Tapping: the hole decides, and two methods agree."""

from __future__ import annotations

from math import radians

import pytest

from jobsheet.cutting import tapping
from jobsheet.errors import CalcError

from .tap_torques import torque


def test_a_larger_hole_is_much_easier():
    assert torque(10, 8.8) / torque(10, 8.5) == pytest.approx(0.654, abs=0.001)


def test_hole_of_diameter_less_pitch_is_always_77_percent():
    assert tapping.percent_of_thread(10, 8.5, 1.5) == pytest.approx(0.770, abs=0.0005)


def test_condition_multiplies_and_forming_asks_more():
    base = tapping.tap_torque(3600e6, 1.35, 6e-3, 5e-3)
    assert tapping.tap_torque(3600e6, 1.35, 6e-3, 5e-3, condition=1.6) == pytest.approx(1.6 * base)
    assert tapping.form_tap_torque(base) == pytest.approx(2.5 * base)


def test_any_wrench_at_full_strength_breaks_every_tap_up_to_m6():
    assert tapping.wrench_torque(60, 180e-3) > tapping.tap_strength(6e-3)


def test_strength_goes_with_the_cube():
    assert tapping.tap_strength(8e-3) == pytest.approx(8 * tapping.tap_strength(4e-3))


@pytest.mark.parametrize("hole", [0, -1, 6e-3, 7e-3])
def test_a_hole_is_smaller_than_the_thread(hole):
    with pytest.raises(CalcError, match="hole"):
        tapping.tap_torque(3600e6, 1.35, 6e-3, hole)


@pytest.mark.parametrize("half", [0, 90, 95, -30])
def test_a_thread_has_flanks(half):
    with pytest.raises(CalcError, match="half angle"):
        tapping.tap_torque(3600e6, 1.35, 6e-3, 5e-3, half_angle=radians(half))


def test_a_steeper_flank_asks_more_by_its_tangent():
    thirty, eighty = (
        tapping.tap_torque(3600e6, 1.35, 6e-3, 5e-3, half_angle=radians(half)) for half in (30, 80)
    )
    assert eighty / thirty == pytest.approx(5.6713 / 0.57735, rel=1e-4)
