"""The three invented cards against the scenario's own curves and pushes (demo-scenario section 2)."""

from __future__ import annotations

import pytest

from jobsheet.cutting.quill import thrust_from_push
from jobsheet.errors import DocumentError, NoSuchEntry
from jobsheet.machine.handles import dial_text, reading, scale_text
from jobsheet.machine.spindle import at_speed, choose, neighbours, steps
from jobsheet.storage.card_files import card_names, find_card
from jobsheet.storage.machine_file import machine_from_text
from tests.machine.text import CARD

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


@pytest.mark.parametrize(
    ("name", "easy", "strong"),
    [("bench-mill-b-1", 1.27, 2.55), ("bench-mill-b-2", 1.13, 2.28), ("knee-mill-k-2", 1.46, 2.95)],
)
def test_thrust_of_the_lever_as_the_scenario_prints_it(name, easy, strong):
    lever = find_card(name).lever
    for push, kilonewtons in ((100, easy), (200, strong)):
        thrust = thrust_from_push(
            push=push, lever=lever.length, travel=lever.travel, spring=lever.spring, efficiency=0.85
        )
        assert thrust / 1e3 == pytest.approx(kilonewtons, abs=0.006)


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


@pytest.mark.parametrize(
    ("millimetres", "text", "turns", "line"),
    [
        (14, "5 + 1.50", 5, 75),
        (66, "26 + 1.00", 26, 50),
        (12, "4 + 2.00", 4, 100),
        (38, "15 + 0.50", 15, 25),
        (0, "0 + 0.00", 0, 0),
    ],
)
def test_dial_readings_of_hm_100(millimetres, text, turns, line):
    """Demo scenario section 3b, table of points: all on a line, error 0."""
    handle = find_card("bench-mill-b-1").handle("x")
    found = reading(handle, millimetres * 1e-3)
    assert dial_text(handle, found) == text
    assert (found.line_turns, found.line) == (turns, line)
    assert found.error == pytest.approx(0, abs=1e-9)


def test_a_line_on_the_next_turn_is_line_nought_or_one_of_that_turn():
    """Section 9: 30.5 mm on K-2 is 6 turns, line 1, +0.0054 mm; 75 mm is 14 turns + .1528."""
    handle = find_card("knee-mill-k-2").handle("y")
    found = reading(handle, 30.5e-3)
    assert (found.line_turns, found.line) == (6, 1)
    assert found.error * 1e3 == pytest.approx(0.0054, abs=5e-5)
    assert dial_text(handle, found) == "6 + .0008"
    assert dial_text(handle, reading(handle, 75e-3)) == "14 + .1528"
    assert scale_text(handle) == "0.200 in a turn, lines of 0.001 in"


def test_an_unknown_card_names_the_nearest():
    with pytest.raises(NoSuchEntry, match="did you mean bench-mill-b-1"):
        find_card("Bench mill B1")
    assert len(card_names()) >= 3


def test_a_person_s_own_card_goes_first(own_home):
    folder = own_home / "machines"
    folder.mkdir()
    (folder / "bench-mill-b-1.yaml").write_text(CARD, encoding="utf-8")
    assert find_card("bench-mill-b-1").title == "Test mill"


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("power: 500 W, plate", "power: 500 W"), "say where"),
        (("power: 500 W, plate", "power: 500 mm, plate"), "a power is asked for"),
        (("a turn: 2.5 mm", "a turn: 0 mm"), "above zero"),
        (("a turn: 2.5 mm, a line", "a tern: 2.5 mm, a line"), "did you mean a turn"),
        (("reverses: no", "reverses: maybe"), "neither yes nor no"),
        (("- {speed: 320 rpm}", "- {speed: fast}"), "not a spindle speed"),
        (("dial: mm", "dial: furlong"), "not a dial's unit"),
    ],
)
def test_a_card_that_is_wrong_says_where_and_what(change, says):
    assert change[0] in CARD
    with pytest.raises(DocumentError, match=says) as caught:
        machine_from_text(CARD.replace(*change), "mill.yaml", "mill")
    assert all(problem.line for problem in caught.value.problems)
