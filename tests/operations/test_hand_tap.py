"""Tapping by hand with a set; demo-scenario HM-103 operation 90 and HM-100 operation 70."""

from __future__ import annotations

import pytest

from tests.operations.hole_steps import Step, check, refusal

M8 = {"cutter": "taps M8, drawer 5", "thread": "M8", "depth": "16", "taps": "taper, plug, bottoming"}
IRON = {"material": "EN-GJL-250", "fluid": "dry", "thickness": 0.04}


@pytest.mark.parametrize(("taps", "torque"), [("taper, plug", 2.7), ("taper, plug, bottoming", 2.8)])
def test_hm103_operation_90(taps, torque):
    """Printed as 2.7 to 2.8 N·m: the plug tap's factor gives the first, the bottoming tap's the second."""
    step = Step("hand-tap", {**M8, "taps": taps, "wrench": "280"}, pilot=6.8e-3, **IRON)
    check(step, {
        "torque": (torque, 1, 0.05), "wrench_easy": (8.4, 1, 0.05), "tap_strength": (20, 1, 0.5),
        "percent_thread": (74, 100, 0.5),
    })  # fmt: skip


def test_hm100_operation_70_is_the_same_by_either_kind():
    texts = {"cutter": "taps M6, taper and plug", "thread": "M6", "depth": "through"}
    hand = Step(
        "hand-tap",
        {**texts, "taps": "taper, plug", "condition": "sharp and oiled"},
        material="S235",
        pilot=5e-3,
    )
    check(hand, {
        "torque": (1.92, 1, 0.005), "wrench_easy": (5.4, 1, 0.05), "tap_strength": (8.5, 1, 0.05),
        "percent_thread": (77, 100, 0.5),
    })  # fmt: skip
    tap = Step(
        "tap", {**texts, "method": "by hand", "condition": "sharp and oiled"}, material="S235", pilot=5e-3
    )
    for name in ("torque", "wrench_easy", "wrench_strong", "tap_strength", "percent_thread"):
        assert hand.value(name) == pytest.approx(tap.value(name))


def test_the_state_of_the_taps_multiplies():
    sharp = Step("hand-tap", M8, pilot=6.8e-3, **IRON).value("torque")
    dull = Step("hand-tap", {**M8, "condition": "dull"}, pilot=6.8e-3, **IRON).value("torque")
    assert dull / sharp == pytest.approx(1.8)


def test_the_spindle_stands_and_the_row_says_how():
    step = Step(
        "hand-tap",
        {**M8, "start": "4", "back_off": "each half turn", "at": "15, 12; 15, 38"},
        pilot=6.8e-3,
        **IRON,
    )
    assert step.row.do == "Tap 2 × M8 by hand, 16 deep"
    assert step.row.power_off
    assert step.figures.get("spindle_speed") is None
    assert (
        "taper, plug, bottoming; 4 threads with the spindle turned by hand, then the wrench" in step.row.note
    )
    assert "back off each half turn" in step.row.note
    assert step.dials[0].number == "power off"
    assert all(hole.threaded for hole in step.shapes)


def test_a_blind_hole_wants_a_bottoming_tap():
    assert (
        "without a bottoming tap"
        in Step("hand-tap", {**M8, "taps": "taper, plug"}, pilot=6.8e-3, **IRON).caveats()
    )
    assert Step("hand-tap", M8, pilot=6.8e-3, **IRON).caveats() == ""


def test_a_small_hole_is_too_much_for_hands_and_tap():
    tight = Step("hand-tap", {**M8, "hole": "5"}, **IRON)
    assert tight.value("torque") > 3 * Step("hand-tap", M8, pilot=6.8e-3, **IRON).value("torque")
    stubborn = Step("hand-tap", {**M8, "hole": "4", "condition": "dull"}, material="304", thickness=0.04)
    assert "breaks before it cuts this" in stubborn.caveats()
    assert "more than two hands give" in stubborn.caveats()


def test_more_threads_started_than_there_are_is_said():
    short = Step("hand-tap", {**M8, "depth": "3", "start": "10"}, pilot=6.8e-3, **IRON)
    assert "more threads than the depth has" in short.caveats()


def test_what_has_no_meaning_says_what_to_write():
    none = refusal("hand-tap", M8, **IRON)
    assert none.startswith("hole is not drilled")
    assert "the usual drill is" in none
    large = refusal("hand-tap", {**M8, "hole": "8"}, **IRON)
    assert large == "hole is 8 mm; it must be smaller than what is cut, 8 mm"
    assert "force in tapping is on file" in refusal(
        "hand-tap", {**M8, "hole": "6.8"}, material="PA6", thickness=0.04
    )


def test_it_answers_to_the_notes_of_a_tap():
    assert {"tapping", "tap"} <= set(Step("hand-tap", M8, pilot=6.8e-3, **IRON).kind.groups)
