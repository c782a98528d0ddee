"""Quill: push, thrust and feed turn each other round; small drills."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting import quill
from jobsheet.cutting.drill_forces import chisel_indentation, drill_thrust, drill_torque, pilot_thrust
from jobsheet.cutting.textbook import quill_torque
from jobsheet.errors import CalcError

LEVER = {"lever": 180e-3, "travel": 75e-3, "spring": 15.0}
feeds = st.floats(0.01e-3, 0.6e-3)
sizes = st.floats(2e-3, 25e-3)


@given(st.floats(5, 300))
def test_push_and_thrust_turn_each_other_round(push):
    thrust = quill.thrust_from_push(push, **LEVER)
    assert quill.push_from_thrust(thrust, **LEVER) == pytest.approx(push)


def test_a_push_that_only_holds_the_spring_gives_less_than_no_thrust():
    assert quill.thrust_from_push(1.0, **LEVER) < 0


@given(feeds, sizes)
def test_feed_and_thrust_turn_each_other_round(feed, size):
    thrust = drill_thrust(20000, feed, size, wear=1.3)
    assert quill.feed_from_thrust(thrust, 20000, size, wear=1.3) == pytest.approx(feed, rel=1e-6)
    thrust = pilot_thrust(20000, feed, size, size / 3, wear=1.3)
    assert quill.pilot_feed_from_thrust(thrust, 20000, size, size / 3, wear=1.3) == pytest.approx(
        feed, rel=1e-6
    )
    torque = drill_torque(20000, feed, size, wear=1.3)
    assert quill_torque.feed_from_torque(torque, 20000, size, wear=1.3) == pytest.approx(feed, rel=1e-6)


def test_a_drill_that_is_only_pressed_does_not_bite():
    edge = chisel_indentation(35000, 12e-3, wear=1.3)
    assert quill.feed_from_thrust(edge, 35000, 12e-3, wear=1.3) == 0
    assert quill.feed_from_thrust(edge * 0.5, 35000, 12e-3, wear=1.3) == 0
    assert quill.feed_from_thrust(edge * 1.1, 35000, 12e-3, wear=1.3) > 0


@given(st.floats(50, 3000), sizes)
def test_a_pilot_gives_more_feed_for_the_same_push(thrust, size):
    solid = quill.feed_from_thrust(thrust, 20000, size)
    assert quill.pilot_feed_from_thrust(thrust, 20000, size, size * 0.3) > solid


@pytest.mark.parametrize("name", ["push", "lever", "travel"])
def test_refuses_nothing(name):
    with pytest.raises(CalcError) as refusal:
        quill.thrust_from_push(**{"push": 100, **LEVER, name: 0})
    assert refusal.value.name == name
