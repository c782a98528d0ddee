"""Tapping: the pitch is the feed, and the hole decides the torque."""

from __future__ import annotations

import pytest

from tests.operations.hole_steps import Step, refusal

TAP = {"cutter": "taps M6, taper and plug", "thread": "M6", "depth": "through", "method": "by hand", "condition": "sharp and oiled", "hole": "5"}  # fmt: skip
STEEL = {"material": "S235"}


def test_percent_of_thread_in_the_usual_hole():
    """M6 in 5.0: (6 − 5) / (1.0825 × 1) is 92 % of the basic height 0.5413 P a side, which
    shops call 77 % of a 1.299 P form.
    """
    step = Step("tap", TAP, **STEEL)
    assert step.value("tap_drill") == pytest.approx(5e-3)
    assert step.value("percent_thread") == pytest.approx((6 - 5) / 1.299, abs=0.005)


def test_a_larger_hole_asks_less():
    torques = [
        Step("tap", {**TAP, "hole": hole}, **STEEL).value("torque") for hole in ("4.9", "5", "5.2", "5.4")
    ]
    assert torques == sorted(torques, reverse=True)


def test_a_tap_that_is_dull_or_dry_asks_more():
    sharp = Step("tap", TAP, **STEEL).value("torque")
    assert Step("tap", {**TAP, "condition": "dull"}, **STEEL).value("torque") == pytest.approx(1.8 * sharp)


def test_each_place_has_its_thread():
    step = Step("tap", {**TAP, "at": "10, 10; 30, 10"}, **STEEL)
    assert [hole.threaded for hole in step.shapes] == [True, True]
    assert step.shapes[0].diameter == pytest.approx(6e-3)


def test_a_hole_as_wide_as_the_thread_leaves_none():
    assert "smaller than the thread" in refusal("tap", {**TAP, "hole": "6"}, **STEEL)
