"""Drilling: what a pilot does, how the methods compare, directions."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting import drill_forces as drill
from jobsheet.cutting import drill_point
from jobsheet.errors import CalcError

from .drawn_sizes import feeds, sizes


@given(feeds, sizes, st.floats(0.18, 0.95))
def test_a_pilot_as_wide_as_the_chisel_lowers_thrust_and_torque(feed, size, part):
    put = {"kd": 20000, "feed": feed, "diameter": size}
    assert drill.pilot_thrust(**put, pilot=size * part) < drill.drill_thrust(**put)
    assert drill.pilot_torque(**put, pilot=size * part) < drill.drill_torque(**put)


@given(feeds, sizes)
def test_enlarging_from_nothing_is_the_lips_alone(feed, size):
    put = {"kd": 20000, "feed": feed, "diameter": size}
    assert drill.pilot_torque(**put, pilot=0) == pytest.approx(drill.drill_torque(**put, chisel_ratio=0))
    assert drill.pilot_thrust(**put, pilot=0) == pytest.approx(drill.drill_thrust(**put, chisel_ratio=0))


@given(feeds, sizes)
def test_a_split_point_pushes_less_than_a_standard_one(feed, size):
    put = {"kd": 20000, "feed": feed, "diameter": size}
    assert drill.drill_thrust(**put, chisel_ratio=drill_point.SPLIT_POINT) < drill.drill_thrust(**put)


def test_a_pilot_of_the_chisels_width_takes_off_three_fifths_of_the_thrust():
    inch = 25.4e-3
    put = {"kd": 24000, "feed": 0.008 * inch, "diameter": 0.875 * inch}
    ratio = drill.pilot_thrust(**put, pilot=0.18 * 0.875 * inch) / drill.drill_thrust(**put)
    assert ratio == pytest.approx(0.395, abs=0.005)
    torque = drill.pilot_torque(**put, pilot=0.18 * 0.875 * inch) / drill.drill_torque(**put)
    assert torque == pytest.approx(1 - 0.135, abs=0.002)


@pytest.mark.parametrize(
    "put",
    [{"kd": 0}, {"feed": 0}, {"diameter": -1}, {"chisel_ratio": 1}, {"chisel_ratio": -0.1}, {"wear": 0}],
)
def test_refuses_what_has_no_meaning(put):
    for function in (drill.drill_torque, drill.drill_thrust):
        with pytest.raises(CalcError) as refusal:
            function(**{"kd": 20000, "feed": 1e-4, "diameter": 0.01, **put})
        assert refusal.value.name == next(iter(put))


def test_a_pilot_of_the_drills_own_size_has_no_meaning():
    with pytest.raises(CalcError, match=r"pilot is 0\.01; it must be smaller than the diameter"):
        drill.pilot_thrust(20000, 1e-4, 0.01, 0.01)


@pytest.mark.parametrize(("edges", "factor"), [(3, 1.08), (4, 1.15), (6, 1.25)])
def test_more_edges_cut_thinner_chips_and_ask_more(edges, factor):
    put = {"kd": 20000, "feed": 0.2e-3, "diameter": 15e-3, "pilot": 12e-3}
    for function in (drill.pilot_torque, drill.pilot_thrust):
        assert function(**put, edges=edges) / function(**put) == pytest.approx(factor, abs=0.005)
