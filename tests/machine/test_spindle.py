"""Speeds of a spindle and its torque at each, against the curves of the
scenario (demo-scenario section 2).
"""

from __future__ import annotations

import pytest

from jobsheet.machine.spindle import at_speed, choose, neighbours, steps
from jobsheet.storage.card_files import find_card

CURVES = {
    "bench-mill-b-1": {180: (15.0, 15.0), 320: (13.3, 15.0), 560: (7.60, 13.7), 900: (4.73, 8.51), 1450: (2.93, 5.28), 2300: (1.85, 3.33)},
    "knee-mill-k-2": {75: (90, 90), 120: (90, 90), 190: (82.9, 90), 300: (52.5, 90), 500: (35.7, 45), 800: (22.3, 45), 1250: (14.3, 31.4), 2000: (8.93, 19.6)},
    "bench-mill-b-2": {300: (3.82, 4.97), 1000: (3.82, 4.97), 1100: (3.47, 4.51), 1500: (1.66, 2.16), 2300: (1.66, 2.16), 2500: (1.53, 1.99)},
}  # fmt: skip


@pytest.mark.parametrize("name", sorted(CURVES))
def test_torque_curve_of_the_scenario(name):
    machine = find_card(name)
    for rpm, (continuous, peak) in CURVES[name].items():
        at = at_speed(machine, rpm / 60)
        assert at is not None
        assert at.continuous == pytest.approx(continuous, rel=0.004)
        assert at.peak == pytest.approx(peak, rel=0.004)


def test_b2_gives_120_w_at_300_rpm_in_its_low_range():
    at = at_speed(find_card("bench-mill-b-2"), 5.0)
    assert at.range == "low range"
    assert at.power == pytest.approx(120, rel=0.002)


def test_speed_step_of_section_9():
    """25 m/min, 20 mm -> 398 -> 320 (next 560) on B-1."""
    machine = find_card("bench-mill-b-1")
    choice = choose(machine, 25 / 60 / (3.141592653589793 * 0.020), 1.0, None)
    assert choice.at.marked == "320"
    assert choice.above.marked == "560"


def test_the_fastest_step_that_carries_the_torque_is_taken():
    """12 mm drill, 12.8 N·m on B-1: 560 rpm gives 7.60, so 320 (cutting-data section 1.13)."""
    choice = choose(find_card("bench-mill-b-1"), 10.5, 12.8, None)
    assert choice.at.marked == "320"
    assert choice.why == "carries the torque"


def test_a_speed_that_was_asked_for_stands_and_one_that_is_missing_is_said():
    machine = find_card("bench-mill-b-1")
    assert choose(machine, 0, 99, 900 / 60).at.marked == "900"
    missing = choose(machine, 0, 0, 700 / 60)
    assert missing.why == "not on this machine"
    assert (missing.below.marked, missing.above.marked) == ("560", "900")


def test_neighbours_at_the_ends():
    known = steps(find_card("bench-mill-b-1"))
    assert neighbours(find_card("bench-mill-b-1"), known[0].speed)[0] is None
    assert neighbours(find_card("bench-mill-b-1"), known[-1].speed)[1] is None
