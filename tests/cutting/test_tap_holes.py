"""The hole for a tap, percent of thread, and what a tap and a wrench stand."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting import tapping
from jobsheet.cutting.textbook import tap_holes
from jobsheet.errors import CalcError

from .tap_torques import torque


@pytest.mark.parametrize(
    ("major", "pitch", "hole", "first", "second"),
    [
        (6, 1, 5.0, 2.03, 1.88),
        (8, 1.25, 6.8, 3.94, 3.91),
        (10, 1.5, 8.5, 7.69, 7.03),
        (12, 1.75, 10.2, 13.3, 11.5),
    ],
)
def test_two_methods(major, pitch, hole, first, second):
    assert torque(major, hole) == pytest.approx(first, rel=0.005)
    assert tap_holes.simple_tap_torque(2500e6, pitch * 1e-3, major * 1e-3) == pytest.approx(second, rel=0.005)


@pytest.mark.parametrize(("major", "per_inch"), [(0.375, 16), (0.5, 13)])
def test_understates_the_tight_hole(major, per_inch):
    major, pitch = major * 25.4e-3, 25.4e-3 / per_inch
    easy, tight = (
        tapping.tap_torque(3600e6, 1.35, major, tap_holes.drill_for_percent(major, pitch, share)) for share in (0.60, 0.72)
    )  # fmt: skip
    assert tight / easy == pytest.approx(1.41, abs=0.015)  # a measured case doubles


@given(st.floats(3e-3, 24e-3), st.floats(0.2, 0.9))
def test_percent_and_drill_turn_each_other_round(major, share):
    pitch = major / 6
    hole = tap_holes.drill_for_percent(major, pitch, share)
    assert tapping.percent_of_thread(major, hole, pitch) == pytest.approx(share)


def test_the_basic_minor_diameter_is_83_percent():
    assert tapping.percent_of_thread(10, tap_holes.minor_diameter(10, 1.5), 1.5) == pytest.approx(
        0.833, abs=0.0005
    )


def test_a_thread_that_eats_the_hole_is_refused():
    with pytest.raises(CalcError, match="leave a hole"):
        tap_holes.drill_for_percent(6e-3, 5e-3, 1.0)
    with pytest.raises(CalcError, match="finer"):
        tap_holes.minor_diameter(1e-3, 1e-3)


def test_a_thread_that_leaves_nothing_is_refused():
    """A pitch at which the profile meets itself: 1.0825318 P is the whole diameter,
    or 1.2990381 P for the full height.
    """
    with pytest.raises(CalcError, match="finer"):
        tap_holes.minor_diameter(tapping.BASIC_THREAD, 1.0)
    with pytest.raises(CalcError, match="leave a hole"):
        tap_holes.drill_for_percent(tapping.FULL_THREAD, 1.0, 1.0)
