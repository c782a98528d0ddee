"""Speed that knows torque: both neighbours, the fastest that carries, the pilot
(scenario 7-9, cutting-data 1.13).
"""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.reckoning.adviser.best_cut import advice_on
from jobsheet.reckoning.answers import speeds
from jobsheet.reckoning.answers.speeds import Pilot, neighbours_of, pilot_for, pilot_words
from jobsheet.reckoning.what_if import tried, with_texts
from tests.reckoning.steps import around, step


def drill(size, feed, spindle="", depth="20"):
    return step("drill", cutter=f"drill {size} mm", at="10, 10", depth=depth, feed=str(feed), spindle=spindle)


def test_twelve_from_solid_on_b1_at_320_and_560():
    """Cutting-data 1.13: 12 mm, f 0.14 asks 12.8 N·m: 320 rpm 96 % of 13.3, 560 rpm 168 % of 7.60."""
    found = neighbours_of(drill(12, 0.14, "320 rpm"), around("bench-mill-b-1"))
    assert (found.below.marked, found.at.marked, found.above.marked) == ("180", "320", "560")
    assert found.at.share == pytest.approx(0.96, abs=0.005)
    assert found.above.share == pytest.approx(1.68, abs=0.005)
    assert found.at.torque == pytest.approx(12.8, rel=0.005)


def test_after_a_pilot_of_four():
    """9.91 N·m and 1.24 kN, 75 % at 320: the pilot that makes it so."""
    pilot = pilot_for(drill(12, 0.14), around("bench-mill-b-1"))
    assert pilot.drill == "4 mm"
    assert pilot.after_torque == pytest.approx(9.91, abs=0.01)
    assert pilot.after_thrust == pytest.approx(1240, rel=0.005)
    assert pilot.after_speed * 60 == pytest.approx(320)
    assert pilot.after_share == pytest.approx(0.75, abs=0.005)
    assert pilot.push is not None
    assert pilot.push < 100
    assert "Drill 4 mm first" in pilot_words(pilot)


def test_ten_from_solid_is_beyond_the_hand_and_gets_a_pilot():
    """Section 9: 10 mm, 0.13 on B-1 at 320: 8.68 N·m, 2.76 kN, over 2.55."""
    one = drill(10, 0.13, "320 rpm")
    now = tried("drill", one.fields, around("bench-mill-b-1"))
    assert now.value("torque") == pytest.approx(8.68, abs=0.01)
    assert now.stopped_by.name == "quill-push"
    assert pilot_for(one, around("bench-mill-b-1")).after_push < 100


def test_what_a_speed_does_not_carry_is_fed_less_or_turned_slower():
    """12 mm after 4 at 560 rpm: 9.91 of 7.60 N·m at 0.14 a turn (cutting-data 1.13)."""
    one, setting = drill(12, 0.14, "560 rpm"), around("bench-mill-b-1", pilot=0.004)
    changed = advice_on(one, setting)
    assert changed.edits
    assert changed.found.carried


def test_what_is_not_fed_under_power_gets_no_advice():
    assert advice_on(step("bench-step", what="File"), around("bench-mill-b-1")) is None
    assert neighbours_of(step("saw-cut", off="10 mm"), around("bench-mill-b-1")) is None


def test_a_deep_drill_gets_no_pilot_that_would_buckle():
    """Free length to 17 diameters (holding and more kinds, C3): nothing under 8.8 mm goes 150 deep."""
    found = pilot_for(drill(12, 0.14, depth="150"), around("bench-mill-b-1"))
    assert found is None or found.diameter >= 0.150 / 17


def test_where_nothing_of_the_kind_goes_the_other_way_is_named():
    """A mill of 125 mm of HSS in titanium on B-1: its slowest step of 180 rpm is 71 m/min."""
    one = step("face", cutter="end mill 125 mm, 8 teeth, HSS", depth="1", feed_per_tooth="0.1")
    changed = advice_on(one, around("bench-mill-b-1", "Ti-6Al-4V"))
    assert not changed.advised.clears
    assert changed.advised.stays
    assert changed.advised.other_way


def test_the_choice_of_hm_104():
    """Section 7: 477 rpm lies between 300 (9.4 m/min) and 500 (15.7 m/min); 500
    is 5 % above the value asked for.
    """
    one = step(
        "side-mill",
        cutter="end mill 10 mm, 4 flutes, cobalt, 30 mm out",
        depth="1",
        width="5",
        feed_per_tooth="0.04",
        cutting_speed="15 m/min",
    )
    found = neighbours_of(one, around("knee-mill-k-2", "304"))
    assert (found.at.marked, found.above.marked) == ("300", "500")
    assert found.at.cutting_shown == "9.4 m/min"
    assert found.above.cutting_shown == "15.7 m/min"
    assert found.above.over == pytest.approx(0.05, abs=0.005)


def test_a_stepless_drive_shows_its_other_range():
    """Story 8: facing on B-2 takes 31 % of 3.82 N·m at 560 rpm; in the high range 72 % of 1.66."""
    one = step(
        "face",
        cutter="face mill 50 mm, 4 teeth, carbide",
        depth="0.4",
        width="30",
        feed_per_tooth="0.05",
        spindle="560 rpm",
    )
    found = neighbours_of(one, around("bench-mill-b-2"))
    assert (found.below, found.above) == (None, None)
    assert found.at.share == pytest.approx(0.31, abs=0.005)
    (high,) = found.other_ranges
    assert high.share == pytest.approx(0.72, abs=0.005)
    assert high.continuous == pytest.approx(1.66, abs=0.005)


def test_the_ends_of_the_steps():
    one = drill(3, 0.05, "2300 rpm")
    assert neighbours_of(one, around("bench-mill-b-1")).above is None


def test_a_reamer_has_no_pilot_proposed():
    assert pilot_for(drill(1, 0.02), around("bench-mill-b-1")) is None


def test_texts_are_read_as_if_they_were_typed():
    one = drill(5, 0.08)
    changed = with_texts("drill", one.fields, (("spindle", "560 rpm"), ("feed", "3 thou")), "mm")
    assert changed.spindle.text == "560 rpm"
    assert changed.feed.value == pytest.approx(76.2e-6)
    from jobsheet.errors import CalcError, QuantityError

    with pytest.raises(CalcError, match="field"):
        with_texts("drill", one.fields, (("no_such", "1"),), "mm")
    with pytest.raises(QuantityError):
        with_texts("drill", one.fields, (("feed", "wide"),), "mm")


# --- how good a pilot is ---


def a_try(*, easy=False, share=None, push=None):
    """What is asked of a cut to rank it: whether all is as expected, its share of the torque, the push on the lever."""
    limits = {
        name: SimpleNamespace(share=value, demand=value)
        for name, value in (("spindle-torque", share), ("quill-push", push))
        if value is not None
    }
    return SimpleNamespace(easy=easy, limit=limits.get)


@pytest.mark.parametrize(
    ("first", "after", "small", "rank"),
    [
        ({"easy": True}, {"easy": True}, True, 0),  # of its usual size, every limit as expected
        ({"easy": True}, {"easy": True}, False, 2),  # a larger one
        ({}, {"easy": True, "share": 0.5, "push": 50}, True, 1),  # torque for long and an easy push
        ({"easy": True}, {"share": 1.0, "push": 80}, True, 1),  # right at both
        ({"easy": True}, {"share": 1.001, "push": 80}, True, 3),
        ({"easy": True}, {"share": 1.0, "push": 80.1}, True, 3),
        ({"easy": True}, {"share": 1.0}, True, 1),  # no lever to push
        ({"easy": True}, {}, True, 1),  # no limit at all
        ({"easy": True}, {"share": 1.0, "push": 80}, False, 3),  # only nothing beyond
    ],
)
def test_the_best_pilot_comes_first(first, after, small, rank):
    """As `pilot_for` says it, with an easy push of 80 N."""
    assert speeds._rank(a_try(**first), a_try(**after), 80.0, small=small) == rank


def test_a_pilot_is_larger_than_what_stands_there_and_no_more_than_three_quarters():
    """12 mm: 9 mm is three quarters; after a hole of 8.5 only 9 is left, after one of 9 nothing."""
    left = pilot_for(drill(12, 0.14), around("bench-mill-b-1", pilot=8.5e-3))
    assert left is None or left.drill == "9 mm"
    assert pilot_for(drill(12, 0.14), around("bench-mill-b-1", pilot=9e-3)) is None


def test_a_pilot_goes_seventeen_diameters_deep_and_no_deeper():
    """17 × 4.5 = 76.5 mm: at 76.4 the 4.5 mm goes, at 76.6 it takes the next of the box, 5 mm."""
    setting = around("knee-mill-k-2", thickness=0.2)
    shallow, deep = (pilot_for(drill(10, 0.13, depth=depth), setting) for depth in ("76.4", "76.6"))
    assert (shallow.drill, deep.drill) == ("4.5 mm", "5 mm")


def test_a_drive_in_steps_has_no_other_range():
    """Every step of B-1 is one of its belts: the same speed is had in one way only."""
    assert neighbours_of(drill(12, 0.14, "320 rpm"), around("bench-mill-b-1")).other_ranges == ()


def test_below_the_slowest_step_there_is_none():
    """180 rpm is the slowest step of B-1 (scenario section 2)."""
    found = neighbours_of(drill(12, 0.14, "180 rpm"), around("bench-mill-b-1"))
    assert found.below is None
    assert (found.at.marked, found.above.marked) == ("180", "320")


@pytest.mark.parametrize(
    ("push", "share", "words"),
    [
        (62.4, 0.754, "Drill 4 mm first: then 9.91 N·m at 320 rpm, 75 % of the torque, lever 62 N"),
        (None, 0.754, "Drill 4 mm first: then 9.91 N·m at 320 rpm, 75 % of the torque"),
        (62.6, None, "Drill 4 mm first: then 9.91 N·m at 320 rpm, lever 63 N"),
        (None, None, "Drill 4 mm first: then 9.91 N·m at 320 rpm"),
    ],
)
def test_what_to_drill_first_in_words(push, share, words):
    pilot = Pilot(
        drill="4 mm", diameter=4e-3, feed=0.08e-3, feed_shown="0.08 mm", speed=15.0, share=0.2, push=30.0, after_speed=320 / 60,
        after_torque=9.911, after_share=share, after_thrust=1240.0, after_push=push,
    )  # fmt: skip
    assert pilot_words(pilot) == words
