"""Chatter: scaling, closed forms against the full theory."""

from __future__ import annotations

from math import pi

import pytest

from jobsheet.cutting import chatter
from jobsheet.cutting.chip import engagement_angle, teeth_in_cut
from jobsheet.errors import CalcError

STEEL = {"teeth": 4, "kt": 1800e6, "kr": 0.3, "start": 0.0, "end": pi}


def asked(depth: float, width: float) -> float:
    return chatter.cutting_stiffness(depth, teeth_in_cut(4, engagement_angle(width, 12e-3)), 3000e6)


def test_the_limit_follows_depth_times_teeth_not_width():
    assert asked(2e-3, 6e-3) == pytest.approx(asked(7.6e-3, 0.5e-3), rel=0.01)


def test_the_reference_cutter_scales_by_one_and_a_longer_one_by_less():
    assert chatter.cutter_scale(5e6, chatter.REFERENCE_STIFFNESS) == pytest.approx(1.0)
    assert chatter.cutter_scale(5e6, chatter.REFERENCE_STIFFNESS / 2) < 1


def test_one_mode_is_the_full_theory():
    mode = chatter.Mode(20e6, 80, 0.03)
    full = chatter.zeroth_order([mode], [], teeth=4, kt=600e6, kr=0.3, start=0, end=pi)
    assert full.depth == pytest.approx(chatter.slot_limit_one_mode(20e6, 0.03, 600e6, 0.3, 4), rel=1e-5)
    assert full.frequency == pytest.approx(1.0296 * 80, rel=1e-4)


def test_two_equal_modes_are_the_full_theory_within_a_percent():
    mode = chatter.Mode(10e6, 80, 0.04)
    full = chatter.zeroth_order([mode], [mode], **STEEL).depth
    assert full == pytest.approx(chatter.slot_limit_two_modes(10e6, 0.04, 1800e6, 0.3, 4), rel=0.01)


def test_twice_as_stiff_bears_twice_the_depth():
    soft, stiff = (chatter.Mode(k, 80, 0.04) for k in (5e6, 10e6))
    one, two = (chatter.zeroth_order([mode], [mode], **STEEL).depth for mode in (soft, stiff))
    assert two == pytest.approx(2 * one, rel=1e-6)


def test_the_average_direction_with_the_worst_factor_is_of_the_same_size():
    b = chatter.average_direction_limit(10e6, 0.04, 1800e6, teeth_in_cut=2)
    assert b == pytest.approx(chatter.slot_limit_two_modes(10e6, 0.04, 1800e6, 0.3, 4), rel=0.1)


def test_a_response_at_rest_is_the_softness_and_grows_at_the_mode():
    mode = chatter.Mode(10e6, 80, 0.04)
    assert mode.response(0) == pytest.approx(1e-7)
    assert abs(mode.response(80)) == pytest.approx(1e-7 / 0.08)


def test_refuses_no_modes_and_no_arc():
    with pytest.raises(CalcError, match="modes"):
        chatter.zeroth_order([], [], **STEEL)
    with pytest.raises(CalcError, match="end"):
        chatter.zeroth_order([chatter.Mode(1e7, 80, 0.04)], [], **{**STEEL, "end": 0.0})
