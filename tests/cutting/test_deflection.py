"""Stiffness: stepped cutters, springs in a row, second passes."""

from __future__ import annotations

import pytest

from jobsheet.cutting import deflection as bend
from jobsheet.cutting.textbook import cutter_deflection
from jobsheet.errors import CalcError


def test_twice_the_stick_out_is_an_eighth_of_the_stiffness():
    assert bend.cutter_stiffness(207e9, 0.01, 0.06) == pytest.approx(
        bend.cutter_stiffness(207e9, 0.01, 0.03) / 8
    )


def test_carbide_is_stiffer_by_its_modulus():
    steel, carbide = (bend.cutter_stiffness(e, 0.01, 0.03) for e in (210e9, 600e9))
    assert carbide / steel == pytest.approx(2.86, abs=0.01)


def test_the_error_keeps_the_forces_sign():
    assert bend.wall_error(-18, 9.59e6, 5e6) < 0 < bend.wall_error(18, 9.59e6, 5e6)


@pytest.mark.parametrize(
    "call",
    [
        lambda: bend.cutter_stiffness(207e9, 0, 0.03),
        lambda: cutter_deflection.stepped_stiffness(207e9, 0.012, 0.01, 0.03, 0.04),
        lambda: cutter_deflection.series_stiffness(0, 1),
        lambda: bend.equivalent_diameter(0.01, 1.2),
        lambda: bend.deflection(float("inf"), 1),
    ],
)
def test_refuses_what_has_no_meaning(call):
    with pytest.raises(CalcError):
        call()
