"""The hand: what mends a pace it cannot wind, and what a stopwatch gives back
(scenario 3b, 7, 9; cutting-data 1.15).
"""

from __future__ import annotations

import pytest

from jobsheet.reckoning.adviser.best_cut import advice_on
from jobsheet.reckoning.answers.mends import _teeth, mends_for, out_of_hand
from jobsheet.reckoning.answers.stopwatch_answer import stopwatch
from jobsheet.reckoning.what_if import tried, with_texts
from tests.reckoning.steps import around, step

from .face_wound import FACE

WINDOW = {"cutter": "end mill 10 mm, 4 flutes, cobalt, 30 mm out", "depth": "1", "width": "5"}


def mends(one, setting):
    return mends_for(one, setting, tried(one.kind, one.fields, setting).figures)


def test_planted_mistake_of_hm_100():
    """Face at 900 rpm with 0.05 a tooth: 72 turns a minute; 560 rpm gives 44.8."""
    found = mends(step("face", **FACE, feed_per_tooth="0.05", spindle="900 rpm"), around("bench-mill-b-1"))
    assert {one.sort for one in found} == {"teeth", "cutter"}
    one, setting = step("face", **FACE, feed_per_tooth="0.05", spindle="900 rpm"), around("bench-mill-b-1")
    changed = advice_on(one, setting)
    assert dict(changed.edits)["spindle"] == "560 rpm"
    assert changed.found.value("handle_pace") * 60 <= 50


def test_planted_mistake_of_hm_104():
    """0.03 a tooth at 300 rpm takes 8.5 s a turn: more teeth, or the 0.04 of the plan."""
    one = step("side-mill", **WINDOW, feed_per_tooth="0.03", spindle="300 rpm", cutting_speed="15 m/min")
    setting = around("knee-mill-k-2", "304")
    assert out_of_hand(tried(one.kind, one.fields, setting).figures, setting) == -1
    found = mends(one, setting)
    teeth = [each for each in found if each.sort == "teeth"]
    assert teeth[0].edits[0][1].startswith("end mill 10 mm, 5 teeth")
    planned = step("side-mill", **WINDOW, feed_per_tooth="0.04", spindle="300 rpm")
    assert mends(planned, setting) == ()


def test_every_offer_winds_evenly_when_it_is_typed():
    for one, setting in (
        (step("face", **FACE, feed_per_tooth="0.05", spindle="900 rpm"), around("bench-mill-b-1")),
        (step("face", **FACE, feed_per_tooth="0.05", spindle="900 rpm"), around("bench-mill-b-2")),
        (
            step("side-mill", **WINDOW, feed_per_tooth="0.03", spindle="300 rpm"),
            around("knee-mill-k-2", "304"),
        ),
        (step("side-mill", **WINDOW, feed="20", spindle="300 rpm"), around("knee-mill-k-2", "304")),
    ):
        found = mends(one, setting)
        assert found
        for each in found:
            after = tried(one.kind, with_texts(one.kind, one.fields, each.edits, "mm"), setting)
            assert out_of_hand(after.figures, setting) == 0
            assert after.value("handle_pace") == pytest.approx(each.pace)
            assert after.value("feed_per_tooth") == pytest.approx(each.feed_per_tooth)


def test_an_even_pace_needs_no_mending():
    assert (
        mends(step("face", **FACE, feed_per_tooth="0.05", spindle="560 rpm"), around("bench-mill-b-1")) == ()
    )
    assert (
        mends_for(
            step("drill", cutter="drill 5", at="1, 1", depth="5", feed="0.08"), around("bench-mill-b-1"), None
        )
        == ()
    )


def test_a_cutter_that_is_offered_is_not_named_by_another_one_s_drawer():
    found = mends(step("face", **FACE, feed_per_tooth="0.05", spindle="900 rpm"), around("bench-mill-b-1"))
    texts = [text for each in found for name, text in each.edits if name == "cutter"]
    assert texts
    assert not any("drawer" in text for text in texts)


def test_a_pass_of_the_scenario_gives_its_own_feed_back():
    """HM-100 step 20: 130 mm long in 70 s is the 112 mm/min that was planned,
    within the rounding of the seconds.
    """
    one = step("face", **FACE, feed_per_tooth="0.05", spindle="560 rpm")
    found = stopwatch(one, around("bench-mill-b-1"), length=0.130, seconds=69.6)
    assert found.feed * 60e3 == pytest.approx(112, abs=0.1)
    assert found.found.value("torque") == pytest.approx(found.planned.value("torque"), rel=2e-3)
    typed = with_texts("face", one.fields, found.edits, "mm")
    assert typed.feed_per_tooth is None
    assert tried("face", typed, around("bench-mill-b-1")).value("table_feed") * 60e3 == pytest.approx(
        112, abs=0.5
    )


@pytest.mark.parametrize(
    ("cutter", "kind", "teeth"),
    [
        # One bit; two or three edges that meet in the middle; any (common practice, no source).
        ("fly cutter 60 mm, carbide", "fly-cut", set()),
        ("slot drill 10 mm, 30 mm out", "slot", {"3 teeth"}),
        (
            "end mill 10 mm, 2 teeth, 30 mm out",
            "slot",
            {"3 teeth", "4 teeth", "5 teeth", "6 teeth", "8 teeth"},
        ),
    ],
)
def test_a_cutter_is_offered_with_the_teeth_that_its_kind_has(cutter, kind, teeth):
    cuts = {
        "slot": {"ends": "10, 10; 60, 10", "depth": "2"},
        "fly-cut": {"width": "30", "depth": "0.2"},
    }[kind]
    said = {
        label.removeprefix("a cutter with ") for label, _ in _teeth(step(kind, cutter=cutter, **cuts).fields)
    }
    assert said == teeth
