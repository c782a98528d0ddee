"""Hidden constants of the empirical laws, against what each is converted from."""

from __future__ import annotations

import math

import pytest

from jobsheet.cutting import reference


def test_the_point_of_a_drill_of_118_degrees():
    """Half the diameter over tan 59°."""
    assert pytest.approx(0.5 / math.tan(math.radians(59)), abs=5e-4) == reference.EQUAL_POINT


def test_an_hour_has_sixty_lives_and_a_right_angle_less_than_the_rake():
    assert reference.TOOL_LIFE == 60.0
    assert math.pi / 2 < reference.RAKE
    assert pytest.approx(100 * math.pi / 180) == reference.RAKE


def test_constants_of_the_drilling_law_are_the_printed_ones():
    """Metric constants beside their exact conversions (Machinery's Handbook, page 1152)."""
    for ours, exact in (
        (reference.DRILL_LIPS, 0.05029),
        (reference.DRILL_CHISEL, 0.006895),
        (reference.DRILL_TORQUE, 2.514e-5),
    ):
        assert ours == pytest.approx(exact, rel=0.02)


def test_the_energy_of_one_turn_is_its_torque_through_it():
    """2 π of the torque line, rounded as it is printed: P = 1e-6 kW a turn a minute."""
    assert pytest.approx(2 * math.pi * reference.TWIST_TORQUE, rel=0.05) == reference.TWIST_ENERGY
