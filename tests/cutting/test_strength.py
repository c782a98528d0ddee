"""Strength: cubes and proportions."""

from __future__ import annotations

from math import pi

import pytest

from jobsheet.cutting.formula import outside_validity
from jobsheet.cutting.strength import bending_stress, drill_strength
from jobsheet.cutting.textbook.torsion_strength import torsional_strength
from jobsheet.errors import CalcError


def test_a_drill_is_as_strong_as_a_bar_of_half_its_diameter():
    assert drill_strength(6e-3) == pytest.approx(torsional_strength(1200e6, 3e-3))


def test_torsion_of_a_bar_for_the_head():
    assert torsional_strength(16 / pi, 1.0) == pytest.approx(1.0)


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
