"""What a stopwatch gives back (cutting-data 1.15)."""

from __future__ import annotations

import pytest

from jobsheet.errors import CalcError, JobsheetError
from jobsheet.reckoning.answers.stopwatch_answer import stopwatch
from tests.reckoning.steps import around, step

from .face_wound import FACE


def test_stopwatch_of_the_data_sheet():
    """Cutting-data 1.15: 10 turns in 23.4 s at 2.5 mm = 64.1 mm/min."""
    one = step("face", **FACE, feed_per_tooth="0.05", spindle="560 rpm")
    found = stopwatch(one, around("bench-mill-b-1"), turns=10, seconds=23.4)
    assert found.feed * 60e3 == pytest.approx(64.1, abs=0.01)
    assert found.pace * 60 == pytest.approx(10 / 23.4 * 60)
    # feed per tooth = v / (n z) = 64.1 / (560 × 4)
    assert found.chip * 1e3 == pytest.approx(64.103 / 2240, rel=1e-4)
    assert found.each == "feed_per_tooth"
    assert found.found.value("torque") < found.planned.value("torque")


def test_a_drill_gives_its_feed_a_turn():
    """11.5 mm at 900 rpm in 12 s: 57.5 mm/min, 0.064 a turn."""
    one = step("drill", cutter="drill 5", at="14, 12", depth="11.5", feed="0.08", spindle="900 rpm")
    found = stopwatch(one, around("bench-mill-b-1"), length=0.0115, seconds=12)
    assert found.each == "feed_per_turn"
    assert found.chip * 1e3 == pytest.approx(57.5 / 900, rel=1e-6)
    assert found.pace is None


@pytest.mark.parametrize(
    "wrong",
    [
        {"seconds": 10},
        {"seconds": 10, "turns": 1, "length": 0.1},
        {"seconds": 0, "length": 0.1},
        {"seconds": 10, "length": -0.1},
        {"seconds": 10, "turns": 0},
        {"seconds": 1e-300, "length": 0.1},
        {"seconds": float("nan"), "length": 0.1},
        {"seconds": 1e9, "length": 0.1},
        {"seconds": 1, "length": 100},
    ],
)
def test_a_watch_that_says_nothing(wrong):
    with pytest.raises(JobsheetError):
        stopwatch(step("face", **FACE, feed_per_tooth="0.05"), around("bench-mill-b-1"), **wrong)


def test_a_step_that_is_not_fed_or_not_wound():
    with pytest.raises(CalcError):
        stopwatch(step("bench-step", what="File"), around("bench-mill-b-1"), seconds=10, length=0.1)
    with pytest.raises(CalcError, match="not wound"):
        stopwatch(
            step("drill", cutter="drill 5", at="1, 1", depth="5", feed="0.08"),
            around("bench-mill-b-1"),
            seconds=9,
            turns=3,
        )


def test_a_step_that_cannot_be_reckoned_says_its_own_problem():
    """Nothing stands around the sentence of the step: a larger hole than what opens it."""
    one = step(
        "countersink", cutter="countersink 20 mm, 90°, 3 edges", at="14, 12", hole="6.6", to="4", feed="0.1"
    )
    with pytest.raises(JobsheetError) as said:
        stopwatch(one, around("bench-mill-b-1"), seconds=5, length=0.05)
    assert str(said.value) == "Hole is 6.6 mm; it must be smaller than what is cut, 4 mm."


def drilled(**more):
    one = step("drill", cutter="drill 5", at="14, 12", depth="11.5", feed="0.08", spindle="900 rpm")
    return stopwatch(one, around("bench-mill-b-1"), **more)


@pytest.mark.parametrize(("seconds", "fits"), [(0.1, True), (0.09, False), (86400, True), (86401, False)])
def test_a_hand_times_from_a_tenth_of_a_second_to_a_day(seconds, fits):
    if fits:
        assert drilled(length=1e-3, seconds=seconds).feed == pytest.approx(1e-3 / seconds)
    else:
        with pytest.raises(CalcError, match=r"from 0\.1 s to a day"):
            drilled(length=1e-3, seconds=seconds)


def test_half_a_metre_a_second_is_still_a_feed():
    assert drilled(length=0.5, seconds=1).feed == pytest.approx(0.5)
    with pytest.raises(CalcError, match="look at the length and the seconds"):
        drilled(length=0.501, seconds=1)


def test_the_edits_write_the_real_feed_and_empty_the_other_ways_of_saying_it():
    """0.0115 m in 12 s at 15 rev/s: 0.0639 mm a turn; 10 turns of 2.5 mm in 23.4 s: 64.1 mm/min."""
    assert dict(drilled(length=0.0115, seconds=12).edits)["feed"] == "0.064 mm"
    face = step("face", **FACE, feed_per_tooth="0.05", spindle="560 rpm")
    edits = dict(stopwatch(face, around("bench-mill-b-1"), turns=10, seconds=23.4).edits)
    assert edits["feed_per_tooth"] == ""
    assert edits["feed"].endswith("mm/min")
    assert float(edits["feed"].split()[0]) == pytest.approx(64.1, abs=0.5)
