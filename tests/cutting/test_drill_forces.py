"""Drilling: what a pilot does, how the methods compare, directions."""

from __future__ import annotations

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting import drill_forces as drill
from jobsheet.cutting import drill_lines, drill_point
from jobsheet.cutting.textbook import twist_drill_forms
from jobsheet.errors import CalcError

feeds = st.floats(0.02e-3, 0.5e-3)
sizes = st.floats(2e-3, 30e-3)


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


@given(feeds, sizes, st.floats(1.01, 2))
def test_more_feed_and_more_diameter_ask_more(feed, size, more):
    for function in (
        drill.drill_torque,
        drill.drill_thrust,
        drill_lines.twist_drill_torque,
        drill_lines.twist_drill_thrust,
    ):
        base = function(10.0, feed, size)
        assert function(10.0, feed * more, size) > base
        assert function(10.0, feed, size * more) > base


def test_a_pilot_of_the_chisels_width_takes_off_three_fifths_of_the_thrust():
    inch = 25.4e-3
    put = {"kd": 24000, "feed": 0.008 * inch, "diameter": 0.875 * inch}
    ratio = drill.pilot_thrust(**put, pilot=0.18 * 0.875 * inch) / drill.drill_thrust(**put)
    assert ratio == pytest.approx(0.395, abs=0.005)
    torque = drill.pilot_torque(**put, pilot=0.18 * 0.875 * inch) / drill.drill_torque(**put)
    assert torque == pytest.approx(1 - 0.135, abs=0.002)


# K of the second set and Kd of the first for the same work; the ratio from 5 mm at 0.08 to 16 mm at 0.25.
PAIRS = {
    "low carbon": (2.22, 20000, (0.85, 1.05), (0.97, 1.19)),
    "free cutting": (1.42, 12000, (0.90, 1.12), (1.03, 1.26)),
    "chromium 229": (2.10, 24000, (0.66, 0.83), (0.76, 0.94)),
    "chromium 269": (2.41, 28000, (0.65, 0.81), (0.75, 0.92)),
    "grey iron": (1.39, 18000, (0.59, 0.73), (0.67, 0.83)),
    "aluminium": (1.01, 7000, (1.10, 1.36), (1.26, 1.54)),
}


@pytest.mark.parametrize("pair", PAIRS.values(), ids=PAIRS)
def test_the_two_methods_lie_as_far_apart_as_we_say(pair):
    k, kd, torque, thrust = pair
    spans = [(5e-3, 0.08e-3), (8e-3, 0.12e-3), (12e-3, 0.18e-3), (16e-3, 0.25e-3)]
    torques = [drill_lines.twist_drill_torque(k, f, d) / drill.drill_torque(kd, f, d) for d, f in spans]
    thrusts = [drill_lines.twist_drill_thrust(k, f, d) / drill.drill_thrust(kd, f, d) for d, f in spans]
    assert (min(torques), max(torques)) == pytest.approx(torque, abs=0.015)
    assert (min(thrusts), max(thrusts)) == pytest.approx(thrust, abs=0.015)


@pytest.mark.parametrize("pair", PAIRS.values(), ids=PAIRS)
@given(size=st.floats(5e-3, 16e-3), feed=st.floats(0.08e-3, 0.25e-3))
def test_and_any_feed_with_any_diameter_stays_in_what_is_normal(pair, size, feed):
    k, kd, *_ = pair
    torque = drill_lines.twist_drill_torque(k, feed, size) / drill.drill_torque(kd, feed, size)
    thrust = drill_lines.twist_drill_thrust(k, feed, size) / drill.drill_thrust(kd, feed, size)
    assert min(torque, thrust) > 0.55
    assert max(torque, thrust) < 1.6


def test_the_lips_alone_are_half_to_two_thirds_of_the_whole():
    for d, f in ((6e-3, 0.1e-3), (10e-3, 0.15e-3), (12e-3, 0.2e-3)):
        kc = 1500e6 * (twist_drill_forms.drill_chip_thickness(f, 2.06) / 1e-3) ** -0.21
        ratio = drill_lines.kienzle_drill_torque(kc, f, d) / drill.drill_torque(20000, f, d)
        assert 0.45 < ratio < 0.70


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


def test_lips_in_a_hole_leave_out_what_is_drilled_already():
    """Torque goes with the area of the ring: f kc (D^2 - d^2) / 8."""
    whole = drill_lines.kienzle_drill_torque(2000e6, 0.2e-3, 10e-3)
    assert whole == pytest.approx(5.0)
    assert drill_lines.kienzle_drill_torque(2000e6, 0.2e-3, 10e-3, pilot=6e-3) == pytest.approx(0.64 * whole)


def test_a_flat_point_has_half_the_feed_on_each_lip_and_a_pointed_one_less():
    assert twist_drill_forms.drill_chip_thickness(0.2e-3, pi) == pytest.approx(0.1e-3)
    assert twist_drill_forms.drill_chip_thickness(0.2e-3, pi / 3) == pytest.approx(0.05e-3)
    flat, pointed = (
        twist_drill_forms.kienzle_drill_thrust(2000e6, 0.2e-3, 10e-3, angle) for angle in (pi, pi / 3)
    )
    assert flat == pytest.approx(0.63 * 5e-3 * 0.2e-3 * 2000e6)
    assert pointed == pytest.approx(flat / 2)


@pytest.mark.parametrize("angle", [0, -1, 3.15])
def test_a_point_of_more_than_half_a_turn_has_no_meaning(angle):
    with pytest.raises(CalcError, match="point angle"):
        twist_drill_forms.drill_chip_thickness(0.2e-3, angle)
    with pytest.raises(CalcError, match="point angle"):
        twist_drill_forms.kienzle_drill_thrust(2000e6, 0.2e-3, 10e-3, angle)


def test_a_hole_of_the_drills_own_size_and_a_negative_one_are_refused():
    for pilot in (10e-3, -1e-3):
        with pytest.raises(CalcError, match="pilot"):
            drill_lines.kienzle_drill_torque(2000e6, 0.2e-3, 10e-3, pilot=pilot)
