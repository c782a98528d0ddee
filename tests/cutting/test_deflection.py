"""Stiffness: stepped cutters, springs in a row, second passes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

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


def test_the_error_keeps_the_forces_sign():
    assert bend.wall_error(-18, 9.59e6, 5e6) < 0 < bend.wall_error(18, 9.59e6, 5e6)


def test_a_second_pass_takes_off_most_of_it():
    assert cutter_deflection.second_pass_error(20e-6, 3.3e6, 1e6) < 5e-6


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
