"""What a cut asks of the learned limits: torque over the peak, stiffness over the class."""

from __future__ import annotations

import pytest

from jobsheet.limits.each.chatter import class_capacity
from jobsheet.machine.spindle import at_speed
from jobsheet.reckoning.asked import asked_of
from jobsheet.storage.card_files import find_card
from tests.limits.one_cut import figures

B1 = find_card("bench-mill-b-1")


def shares(found, speed=None):
    from tests.limits.one_cut import around

    return {one.limit: one for one in asked_of(found, around(), speed)}


def test_a_torque_is_a_share_of_the_peak_at_its_speed():
    found = shares(figures(torque=3.0, spindle_speed=560 / 60))["spindle-torque"]
    assert (found.demand, found.share) == (3.0, pytest.approx(3.0 / at_speed(B1, 560 / 60).peak))


def test_the_tachometer_goes_before_the_mark_of_the_step_where_it_is_a_speed_of_the_machine():
    made = figures(torque=3.0, spindle_speed=560 / 60)
    assert shares(made, 900 / 60)["spindle-torque"].share == pytest.approx(3.0 / at_speed(B1, 900 / 60).peak)
    # A belt under load slips a little: no marked speed turns at 540.
    assert shares(made, 540 / 60)["spindle-torque"].share == pytest.approx(3.0 / at_speed(B1, 560 / 60).peak)


def test_a_stiffness_is_a_share_of_the_class():
    made = figures(cutting_stiffness=2e6, spindle_speed=560 / 60)
    found = shares(made)["chatter"]
    assert (found.demand, found.share) == (2e6, pytest.approx(2e6 / class_capacity(made, B1)))


def test_what_turns_nothing_and_rings_nothing_asks_nothing():
    assert shares(figures()) == {}
    assert shares(figures(torque=3.0)) == {}
