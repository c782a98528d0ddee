"""Chips: slanted edges, the ends of an arc, refusals."""

from __future__ import annotations

from math import pi, radians

import pytest

from jobsheet.cutting import chip, engagement
from jobsheet.cutting.textbook import angles_of_engagement, chip_thicknesses
from jobsheet.errors import CalcError


def test_a_slanted_edge_thins_the_chip():
    square, slanted = (chip.chip_thickness(0.1, pi / 2, angle) for angle in (pi / 2, radians(45)))
    assert slanted == pytest.approx(square / 2**0.5)


def test_an_edge_of_thirty_degrees_halves_the_mean_over_an_arc():
    assert chip.arc_chip_thickness(0.1, 0.3, 1.4, radians(30)) == pytest.approx(
        chip.arc_chip_thickness(0.1, 0.3, 1.4) / 2
    )


def test_both_ends_of_half_a_turn_have_no_chip_and_are_no_refusal():
    assert chip.chip_thickness(0.1, 0.0) == 0
    assert chip.chip_thickness(0.1, pi) == pytest.approx(0, abs=1e-12)
    assert chip.arc_chip_thickness(0.1, 0.0, pi) == pytest.approx(0.1 * 2 / pi)


@pytest.mark.parametrize(
    "call",
    [
        lambda: angles_of_engagement.engagement_angle(11, 10),
        lambda: chip_thicknesses.mean_chip_thickness(0.1, 0, 10),
        lambda: chip_thicknesses.mean_chip_thickness(0.1, 5, 10, 0),
        lambda: chip_thicknesses.mean_chip_thickness(0.1, 5, 10, 2),
        lambda: chip.chip_thickness(0.1, -0.1),
        lambda: chip.arc_chip_thickness(0.1, 1.0, 1.0),
        lambda: chip_thicknesses.round_insert_chip_thickness(0.1, 13, 12),
        lambda: engagement.teeth_in_cut(4, 6.3),
        lambda: engagement.teeth_in_cut(4, 0),
        lambda: engagement.teeth_in_cut(4, -0.1),
        lambda: chip.chip_thickness(0.1, 3.2),
        lambda: chip.arc_chip_thickness(0.1, 0.0, 3.2),
        lambda: chip.arc_chip_thickness(0.1, -0.1, 1.0),
    ],
)
def test_refuses_what_has_no_meaning(call):
    with pytest.raises(CalcError):
        call()
