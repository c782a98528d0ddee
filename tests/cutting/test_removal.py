"""Removal: volumes that can be done in the head."""

from __future__ import annotations

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting.removal import drilling_removal_rate, milling_removal_rate
from jobsheet.errors import CalcError


def test_a_box():
    assert milling_removal_rate(depth=1.0, width=2.0, table_feed=3.0) == 6.0


def test_a_cylinder_of_diameter_two():
    assert drilling_removal_rate(diameter=2.0, feed=1.0, spindle_speed=1.0) == pytest.approx(pi)


@given(st.floats(1e-3, 0.99))
def test_a_pilot_leaves_less_to_cut_and_ring_and_core_make_the_whole(part):
    whole = drilling_removal_rate(0.01, 1e-4, 5)
    ring = drilling_removal_rate(0.01, 1e-4, 5, pilot=0.01 * part)
    core = drilling_removal_rate(0.01 * part, 1e-4, 5)
    assert ring + core == pytest.approx(whole)


@pytest.mark.parametrize("pilot", [0.01, 0.02, -1e-3])
def test_a_pilot_is_smaller_than_the_drill(pilot):
    with pytest.raises(CalcError, match="pilot"):
        drilling_removal_rate(0.01, 1e-4, 5, pilot=pilot)
