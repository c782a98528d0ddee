"""Factors of the drilling laws, against the printed tables that they stand for."""

from __future__ import annotations

import pytest

from jobsheet.cutting import drill_factors
from jobsheet.errors import CalcError


@pytest.mark.parametrize(
    ("ratio", "torque", "thrust"),
    [(0.03, 1.000, 1.100), (0.10, 1.020, 1.235), (0.18, 1.085, 1.355), (0.25, 1.155, 1.445), (0.30, 1.235, 1.500)],
)  # fmt: skip
def test_factors_of_the_chisel_edge(ratio, torque, thrust):
    """Machinery's Handbook, table of chisel-edge factors, from memory."""
    assert drill_factors.chisel_torque_factor(ratio) == pytest.approx(torque, rel=0.01)
    assert drill_factors.chisel_thrust_factor(ratio) == pytest.approx(thrust, rel=0.02)
    assert drill_factors.chisel_indentation_factor(ratio) == pytest.approx(ratio**2)


def test_all_of_them_are_one_at_one_millimetre_and_two_edges():
    assert drill_factors.drill_feed_factor(1e-3) == pytest.approx(1)
    assert drill_factors.drill_thrust_diameter_factor(1e-3) == pytest.approx(1)
    assert drill_factors.drill_torque_diameter_factor(1e-3) == pytest.approx(1)
    assert drill_factors.edges_factor(2) == 1


def test_torque_grows_by_one_power_of_the_diameter_more_than_thrust():
    for diameter in (2e-3, 8e-3, 20e-3):
        ratio = drill_factors.drill_torque_diameter_factor(
            diameter
        ) / drill_factors.drill_thrust_diameter_factor(diameter)
        assert ratio == pytest.approx(diameter / 1e-3)


@pytest.mark.parametrize("ratio", [1, -0.1, 1.5])
def test_a_chisel_edge_is_less_than_the_diameter(ratio):
    for factor in (
        drill_factors.chisel_torque_factor,
        drill_factors.chisel_thrust_factor,
        drill_factors.chisel_indentation_factor,
    ):
        with pytest.raises(CalcError):
            factor(ratio)
