"""Points of a set-up: numbered as the steps first come to them, each once."""

from __future__ import annotations

import pytest

from jobsheet.machine.dial_readings import stop
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.points import DialPlace, dial_place, numbers_of, places_of, points_of
from jobsheet.storage.card_files import find_card

from .plans import bench, drill, job, plate


def points(plan):
    reckoned = Reckoner().reckon(plan)
    return points_of(reckoned.job.set_ups[0], reckoned.settings)


def test_the_four_points_of_the_plate_are_gone_to_by_three_steps():
    found = points(plate())
    assert [point.number for point in found] == [1, 2, 3, 4]
    assert all(len(point.steps) == 3 for point in found)
    drilled = plate().find("drill")[1]
    assert numbers_of(drilled, found) == (1, 2, 3, 4)


def test_a_place_that_two_steps_go_to_is_one_point():
    found = points(job([drill(10, [(10, 10), (30, 10)]), drill(20, [(30, 10), (50, 10)])]))
    assert [(point.x_text, point.steps) for point in found] == [
        ("10", (10,)),
        ("30", (10, 20)),
        ("50", (20,)),
    ]
    assert found[1].diameter == pytest.approx(5e-3)


def test_a_step_without_places_goes_to_none():
    plan = job([bench(10)])
    assert points(plan) == ()
    assert places_of(plan.set_ups[0].operations[0]) == ()


def test_a_dial_place_is_that_of_the_handle_and_nothing_without_one():
    handle = find_card("bench-mill-b-1").handle("x")
    assert dial_place(handle, 0.014, "mm").on_lines == stop(handle, 0.014).on_lines
    assert dial_place(None, 0.014, "mm") == DialPlace("", "")
