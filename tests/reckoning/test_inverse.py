"""Inverse answers: what is answered is carried and five in a hundred more is not; scenario sections 2, 9, cutting-data 1.6, 1.13."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from jobsheet.errors import CalcError
from jobsheet.reckoning.adviser.best_cut import advice_on
from jobsheet.reckoning.answers.inverse import (
    DEEPEST,
    best,
    deepest_here,
    deepest_pass,
    is_carried,
    is_easy,
    widest_pass,
    with_depth,
    with_width,
)
from jobsheet.reckoning.answers.largest import largest_drill, largest_tap, widest_face_mill
from jobsheet.reckoning.answers.reach_answer import reach, setting_of
from jobsheet.reckoning.answers.saw_first import saw_first
from jobsheet.reckoning.what_if import tried, with_texts
from jobsheet.storage.card_files import find_card
from tests.reckoning.steps import around, step

MACHINES = ("bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2")
SIDE = {"cutter": "end mill 12 mm, 4 teeth, 60 mm out", "width": "6", "depth": "1", "feed_per_tooth": "0.04"}
FACE = {
    "cutter": "face mill 50 mm, 4 teeth, carbide",
    "width": "30",
    "depth": "0.5",
    "feed_per_tooth": "0.05",
}


@pytest.mark.parametrize(
    ("machine", "way"),
    [
        ("bench-mill-b-1", "by hand only"),
        ("bench-mill-b-2", "under power"),
        ("knee-mill-k-2", "by hand or with a tapping head that slips"),
    ],
)
def test_largest_tap_of_the_scenario(machine, way):
    """Section 2: the yes-or-no limits are asked first, whatever the torque."""
    assert largest_tap(around(machine)).way == way


def test_b2_taps_m6_under_power_and_not_m10():
    """Story 8: M6 becomes possible under power (1.92 N·m against a peak of 4.97); M10 asks 7.3 and is beyond."""
    found = largest_tap(around("bench-mill-b-2"))
    assert 6e-3 <= found.expected_size < 10e-3
    assert found.tight_size < 10e-3
    assert found.stopped.name == "spindle-torque"
    assert "by hand up to" in found.note


def test_by_hand_it_ends_where_usual_wrenches_end():
    """The longest usual wrench is for M16 (cutting-data 1.6): above it nothing is said."""
    found = largest_tap(around("bench-mill-b-1", "6082-T6"))
    assert found.tight == "M16"
    assert "usual wrench" in found.stops
    # A comfortable 8.4 N·m on 280 mm: M10 asks 7.3 in mild steel, M12 12.6.
    assert largest_tap(around("bench-mill-b-1")).expected == "M10"


def test_largest_drill_agrees_with_the_push_on_the_lever():
    """Section 9: 10 mm at 0.13 is beyond the hand on B-1; section 2 notes 10 mm in steel, from 8 mm with a pilot."""
    setting = around("bench-mill-b-1")
    found = largest_drill(setting, feed=0.13e-3)
    assert 8e-3 <= found.tight_size < 10e-3
    assert found.stopped.name == "quill-push"
    assert largest_drill(setting).tight_size < 10e-3
    assert largest_drill(setting, pilot=True).tight_size >= 10e-3


def test_largest_drill_of_b2_is_the_noted_one():
    """Section 2: 8 mm with a pilot, at the 0.0055 in of the published band that it was noted with."""
    found = largest_drill(around("bench-mill-b-2"), feed=0.0055 * 25.4e-3, pilot=True)
    assert found.tight_size == pytest.approx(8.1e-3, abs=0.15e-3)


@pytest.mark.parametrize("machine", MACHINES)
@pytest.mark.parametrize("pilot", [False, True])
def test_the_next_larger_drill_is_not_carried(machine, pilot):
    from jobsheet.catalog.tools.drill_sets import drill_set
    from jobsheet.reckoning.answers import largest

    setting = around(machine)
    found = largest_drill(setting, pilot=pilot)
    larger = next(size for size in drill_set("metric") if size.diameter > found.tight_size * 1.0001)
    assert larger.diameter <= found.tight_size * 1.05

    def carried(size):
        there = largest.replace(setting, pilot=largest.usual_pilot(size.diameter).high if pilot else None)
        usual = largest.drill_feed(size.diameter, there.material).value
        # At the usual feed, or as little as still cuts where that is too much (0.4 of the curve).
        feeds = (usual, usual * 0.65, usual * 0.4)
        return any(
            best("drill", largest._drilled(size, there, feed), there, is_carried).carried for feed in feeds
        )

    assert not carried(larger)
    assert carried(next(size for size in drill_set("metric") if size.name == found.tight))
    assert found.expected_size <= found.tight_size


@given(
    st.sampled_from(MACHINES),
    st.sampled_from(["S235", "6082-T6", "304", "EN-GJL-250"]),
    st.floats(0.5, 11.9),
    st.floats(0.02, 0.08),
    st.sampled_from([True, False]),
)
@settings(max_examples=12)
def test_the_answer_is_carried_and_five_in_a_hundred_more_is_not(machine, material, width, tooth, held):
    texts = {**SIDE, "width": f"{width:.3f}", "feed_per_tooth": f"{tooth:.4f}"}
    one = step("side-mill", **texts)
    setting = setting_of(find_card(machine), material) if held else around(machine, material)
    found = deepest_pass(one, setting)
    if found.tight is None:
        assert found.stops
        return
    at = best("side-mill", with_depth(one.fields, found.tight), setting, is_carried)
    assert at.carried
    more = best("side-mill", with_depth(one.fields, found.tight * 1.05), setting, is_carried)
    if found.tight < DEEPEST * 12e-3 * 0.999:
        assert not more.carried
        assert found.stopped is not None or found.end
    if found.expected is not None:
        assert found.expected <= found.tight * (1 + 1e-9)
        assert found.plan <= found.expected * (1 + 1e-9)
        if not found.anyway:
            assert best("side-mill", with_depth(one.fields, found.expected), setting, is_easy).easy


@given(st.sampled_from(MACHINES), st.floats(0.1, 3.0))
@settings(max_examples=8)
def test_the_widest_pass_is_carried_and_more_is_not(machine, depth):
    one = step("face", **{**FACE, "depth": f"{depth:.3f}"})
    setting = around(machine)
    found = widest_pass(one, setting)
    if found.tight is None:
        assert found.stops
        return
    roomy = around(machine, extent=(0.08, 0.05, 0.02))
    assert best("face", with_width(one.fields, found.tight), roomy, is_carried).carried
    if found.tight < 0.05:  # also where it ends a hair before the cutter's own width
        assert not best(
            "face", with_width(one.fields, min(found.tight * 1.05, 0.05)), roomy, is_carried
        ).carried
        assert found.stopped is not None
    else:
        assert found.end == "as wide as the cutter"


@given(st.sampled_from(MACHINES), st.integers(2, 40), st.integers(1, 22), st.integers(8, 50))
@settings(max_examples=8)
def test_answers_and_verdicts_do_not_depend_on_units(machine, depth, width, tooth):
    """The same cut typed in thou and in millimetres of the same length."""
    thou = {
        "cutter": "end mill 1/2 in, 4 teeth, 32 mm out",
        "depth": f"{depth * 10} thou",
        "width": f"{width * 20} thou",
        "feed_per_tooth": f"{tooth / 10 + 0.03:.2f} thou",
    }
    metric = {
        "cutter": "end mill 12.7 mm, 4 teeth, 32 mm out",
        "depth": f"{depth * 0.254:.6f} mm",
        "width": f"{width * 0.508:.6f} mm",
        "feed_per_tooth": f"{(tooth / 10 + 0.03) * 0.0254:.8f} mm",
    }
    inch = tried("side-mill", step("side-mill", units="in", **thou).fields, around(machine, units="in"))
    mm = tried("side-mill", step("side-mill", **metric).fields, around(machine))
    assert [(one.name, one.verdict) for one in inch.limits] == [(one.name, one.verdict) for one in mm.limits]
    for one, other in zip(inch.limits, mm.limits, strict=True):
        assert one.share == pytest.approx(other.share, rel=1e-6)
    deep = deepest_pass(step("side-mill", units="in", **thou), around(machine, units="in"))
    same = deepest_pass(step("side-mill", **metric), around(machine))
    assert deep.tight == pytest.approx(same.tight, rel=1e-3)


def test_where_chatter_is_not_known_one_in_ten_of_the_class_is_named():
    """HM-104: a layer of 1 mm asks 9.0 N/µm where the middle of the class is 12.2; one in ten gives out at its band's share."""
    one = step(
        "slot", cutter="end mill 10 mm, 4 flutes, cobalt, 30 mm out", ends="20, 20; 60, 20", depth="1", feed_per_tooth="0.04",
        spindle="300 rpm",
    )  # fmt: skip
    setting = around("knee-mill-k-2", "304")
    found = deepest_pass(one, setting)
    asks = tried("slot", one.fields, setting).limit("chatter")
    spread = math.log(asks.high / asks.low) / (2 * 1.6448536269514722)
    assert found.untried == pytest.approx(1e-3 * math.exp(-1.2815515655 * spread) / asks.share, rel=2e-3)
    assert found.untried_limit.name == "chatter"
    assert found.plan == found.untried


def test_a_typed_speed_stands():
    one = step("side-mill", **SIDE, spindle="560 rpm")
    found = deepest_pass(one, around("bench-mill-b-1"))
    assert found.at.shown("spindle_speed") == "560 rpm"


def test_what_is_no_milling_cut_is_refused():
    drill = step("drill", cutter="drill 5", at="1, 1", depth="5", feed="0.08")
    with pytest.raises(CalcError):
        deepest_pass(drill, around("bench-mill-b-1"))
    with pytest.raises(CalcError):
        widest_pass(
            step("slot", cutter="slot drill 10", ends="1, 1; 9, 1", depth="1", feed_per_tooth="0.03"),
            around("bench-mill-b-1"),
        )


def test_a_deep_cut_is_advised_in_layers_that_are_no_deeper_than_the_deepest_pass():
    shorter = {**SIDE, "cutter": "end mill 12 mm, 4 teeth, 30 mm out"}
    one, setting = step("side-mill", **{**shorter, "depth": "12"}), around("bench-mill-b-1")
    found = advice_on(one, setting)
    after = tried("side-mill", with_texts("side-mill", one.fields, found.edits, "mm"), setting)
    assert after.carried
    assert 12e-3 / after.value("layers") <= deepest_here(one, setting).plan * (1 + 1e-6)


def test_saw_first_when_the_bulk_takes_longer_to_mill():
    """20 off the end of a 40 × 40 bar, a millimetre at a time: 16 cm² are 3.2 minutes by hand at 5 cm² a minute."""
    texts = {
        **SIDE,
        "width": "20",
        "cut": "1",
        "depth": "40",
        "layer": "2",
        "cutter": "end mill 12 mm, 4 teeth, 60 mm out",
    }
    setting = around("bench-mill-b-1", extent=(0.08, 0.04, 0.04), thickness=0.04)
    found = saw_first(step("side-mill", **texts), setting)
    assert found.saw_time == pytest.approx(16 / 5 * 60)
    assert found.saw_time + found.rest_time < found.mill_time
    assert found.off == pytest.approx(19e-3)
    assert found.words.startswith("Saw first: 3.2 min with a hand saw")
    # A step needs two saw cuts: 40 × 20 across and 40 × 20 along.
    two = saw_first(step("side-mill", **{**texts, "depth": "20"}), setting)
    assert two.saw_time == pytest.approx(16 / 5 * 60)
    # A slice of three millimetres is not sawn, whatever it takes to mill.
    assert saw_first(step("side-mill", **{**texts, "width": "4"}), setting) is None
    # Two millimetres are off at once: no saw.
    assert saw_first(step("side-mill", **{**SIDE, "width": "2", "depth": "2"}), setting) is None
    assert saw_first(step("drill", cutter="drill 5", at="1, 1", depth="5", feed="0.08"), setting) is None


@pytest.mark.parametrize("machine", MACHINES)
def test_widest_face_mill_passes_and_the_next_does_not(machine):
    found = widest_face_mill(around(machine))
    assert found.tight_size >= found.expected_size >= 32e-3
    assert found.stops


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("machine", MACHINES)
def test_everything_at_once(machine, units):
    found = reach(find_card(machine), "S235", units=units)
    assert found.held
    assert [one.answer.what for one in found.passes] == ["deepest pass"] * 3 + ["widest pass"]
    for one in found.passes:
        assert one.answer.plan_shown
        assert one.answer.stops
        # B-1 cut 2.0 deep and 6 wide with such an end mill, 30 out (demo-scenario section 3): more than the answer
        # in mm asks; the one in inches stands out 1.8 mm more, which is within the tenth that is allowed.
        tried = machine != "knee-mill-k-2" and one.step.kind == "side-mill"
        assert tried or one.answer.words == "planned limit, a chance of 1 in 10"
    for one in found.tools:
        assert one.tight
        assert one.stops
