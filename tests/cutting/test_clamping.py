"""Holding: bolts, straps, vices, grip."""

from __future__ import annotations

from math import pi, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting import clamping as holding
from jobsheet.errors import CalcError


@pytest.mark.parametrize("helix", [pi / 2, -pi / 2, 1.6, -1.6])
def test_a_helix_lies_between_straight_up_and_flat(helix):
    with pytest.raises(CalcError, match="helix"):
        holding.lift(100, helix)


def test_a_steep_helix_is_a_helix():
    assert holding.lift(100, 1.5) == pytest.approx(-holding.lift(100, -1.5))
    assert holding.lift(100, 1.5) == pytest.approx(100 * 14.1014, rel=1e-4)


@given(st.floats(0, 0.1))
def test_a_strap_gives_the_work_a_part_of_the_bolt(work):
    assert 0 < holding.strap_force(1000, 0.05, work) <= 1000


def test_tighter_holds_more_and_rust_less():
    assert holding.bolt_tension(40, 0.012) == pytest.approx(2 * holding.bolt_tension(20, 0.012))
    assert holding.bolt_tension(40, 0.012, 0.30) < holding.bolt_tension(40, 0.012)


def test_ratios_of_the_two_worked_vices():
    small = holding.grip(7.54e3, 0.12) / holding.required_grip(285, 153)
    large = holding.grip(19.8e3, 0.12) / holding.required_grip(705, 533)
    assert small == pytest.approx(2.2, abs=0.05)
    assert large == pytest.approx(2.1, abs=0.06)
    assert holding.grip(5.4e3, 0.07) / holding.required_grip(285, 153) == pytest.approx(0.93, abs=0.01)
    assert holding.grip(12.3e3, 0.07) / holding.required_grip(705, 533) == pytest.approx(0.78, abs=0.01)


def test_a_left_hand_helix_pushes_down():
    assert holding.lift(100, radians(-30)) == pytest.approx(-holding.lift(100, radians(30)))


@pytest.mark.parametrize("put", [(0, 3e-3, 0.2), (20, 0, 0.2), (20, 3e-3, 0), (20, 3e-3, 1.1)])
def test_refuses_what_has_no_meaning(put):
    with pytest.raises(CalcError):
        holding.vice_force(*put)
