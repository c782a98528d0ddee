"""A second law for drills: lips, chisel and torque as lines over the feed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting import drill_forces as drill
from jobsheet.cutting import drill_lines
from jobsheet.errors import CalcError

from .drawn_sizes import feeds, sizes


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


def test_lips_in_a_hole_leave_out_what_is_drilled_already():
    """Torque goes with the area of the ring: f kc (D^2 - d^2) / 8."""
    whole = drill_lines.kienzle_drill_torque(2000e6, 0.2e-3, 10e-3)
    assert whole == pytest.approx(5.0)
    assert drill_lines.kienzle_drill_torque(2000e6, 0.2e-3, 10e-3, pilot=6e-3) == pytest.approx(0.64 * whole)


def test_a_hole_of_the_drills_own_size_and_a_negative_one_are_refused():
    for pilot in (10e-3, -1e-3):
        with pytest.raises(CalcError, match="pilot"):
            drill_lines.kienzle_drill_torque(2000e6, 0.2e-3, 10e-3, pilot=pilot)
