"""Strength: cubes and proportions."""

from __future__ import annotations

import pytest

from jobsheet.cutting.formula import outside_validity
from jobsheet.cutting.strength import bending_stress, drill_strength
from jobsheet.errors import CalcError


def test_bending_doubles_with_stick_out_and_falls_with_the_cube_of_diameter():
    base = bending_stress(100, 0.03, 0.01)
    assert bending_stress(100, 0.06, 0.01) == pytest.approx(2 * base)
    assert bending_stress(100, 0.03, 0.02) == pytest.approx(base / 8)


def test_small_drills_carry_a_caveat():
    assert outside_validity(drill_strength, diameter=1e-3) == [
        "outside the range of the source (D 2-13 mm): D is 1 mm",
    ]


@pytest.mark.parametrize("put", [(0, 1, 1), (1, 0, 1), (1, 1, 0)])
def test_refuses_nothing(put):
    with pytest.raises(CalcError):
        bending_stress(*put)
