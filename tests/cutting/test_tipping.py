"""Screws of vices and what tips: against the torque of a power screw in text-books."""

from __future__ import annotations

from math import cos, pi, radians

import pytest

from jobsheet.cutting.textbook import tipping
from jobsheet.errors import CalcError

# pitch diameter and lead in mm of the usual vice screws, mean radius of the collar
SCREWS = {"14x3": (12.5, 3, 10), "20x4": (18, 4, 13), "24x5": (21.5, 5, 16)}


def efficiency(screw: tuple[float, float, float], mu: float, collar: float) -> float:
    diameter, lead, radius = (value * 1e-3 for value in screw)
    return tipping.screw_efficiency(lead, diameter, mu, collar, radius)


@pytest.mark.parametrize("screw", SCREWS.values(), ids=SCREWS)
def test_plain_collars_and_thrust_bearings_lie_in_their_bands(screw):
    assert 0.12 <= efficiency(screw, 0.20, 0.20) < efficiency(screw, 0.10, 0.10) <= 0.26
    assert 0.23 <= efficiency(screw, 0.20, 0.01) < efficiency(screw, 0.10, 0.01) <= 0.48


def test_a_screw_without_friction_loses_nothing():
    assert tipping.screw_efficiency(4e-3, 18e-3, 0, 0, 15e-3) == pytest.approx(1.0)


@pytest.mark.parametrize("screw", SCREWS.values(), ids=SCREWS)
@pytest.mark.parametrize(("mu", "collar"), [(0.08, 0.0), (0.15, 0.15), (0.30, 0.02)])
@pytest.mark.parametrize("half", [radians(14.5), radians(15), radians(30)])
def test_efficiency_is_the_work_of_the_lead_over_the_work_of_the_torque(screw, mu, collar, half):
    """The text-book torque of a power screw: F d/2 (l + pi f d sec a) / (pi d - f l sec a) + F fc dc / 2."""
    d, l, radius = (value * 1e-3 for value in screw)
    friction = mu / cos(half)
    torque = d / 2 * (l + pi * friction * d) / (pi * d - friction * l) + collar * radius
    assert tipping.screw_efficiency(l, d, mu, collar, radius, half_angle=half) == pytest.approx(
        l / (2 * pi * torque)
    )


@pytest.mark.parametrize("half", [0.0, pi / 2, 1.6, -0.1])
def test_a_flank_lies_between_square_and_flat(half):
    with pytest.raises(CalcError, match="half angle"):
        tipping.screw_efficiency(4e-3, 18e-3, 0.1, 0.1, 15e-3, half_angle=half)
    assert tipping.screw_efficiency(4e-3, 18e-3, 0.1, 0.1, 15e-3, half_angle=1.2) > 0


def test_a_screw_that_cannot_turn_is_refused():
    with pytest.raises(CalcError, match="friction"):
        tipping.screw_efficiency(20e-3, 5e-3, 1.0, 0.1, 5e-3)


def test_work_tips_when_the_cut_stands_higher_than_friction_holds():
    assert tipping.tipping_moment(500, 0.05) > tipping.tipping_resistance(5000, 0.02)
    assert tipping.tipping_moment(0, 0.05) == 0
