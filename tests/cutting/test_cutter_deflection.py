"""How far cutters and beams give way."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting import deflection as bend
from jobsheet.cutting.textbook import cutter_deflection


@given(st.floats(0.01, 0.1), st.floats(0.01, 1))
def test_a_step_of_the_same_diameter_is_no_step(length, part):
    plain = bend.cutter_stiffness(207e9, 0.01, length)
    assert cutter_deflection.stepped_stiffness(207e9, 0.01, 0.01, length, part * length) == pytest.approx(
        plain
    )


def test_a_thick_shank_makes_it_stiffer():
    plain = bend.cutter_stiffness(207e9, 9.6e-3, 0.05)
    assert cutter_deflection.stepped_stiffness(207e9, 12e-3, 9.6e-3, 0.05, 0.02) > plain
    assert cutter_deflection.stepped_stiffness(207e9, 12e-3, 9.6e-3, 0.05, 0.05) == pytest.approx(plain)


@given(st.floats(1e5, 1e8), st.floats(1e5, 1e8))
def test_two_in_a_row_are_softer_than_either(one, other):
    both = cutter_deflection.series_stiffness(one, other)
    assert both < min(one, other)
    assert both == pytest.approx(cutter_deflection.series_stiffness(other, one))
    assert bend.wall_error(100, one, other) == pytest.approx(bend.deflection(100, both))


def test_a_second_pass_takes_off_most_of_it():
    assert cutter_deflection.second_pass_error(20e-6, 3.3e6, 1e6) < 5e-6
