"""Slotting: as wide as the cutter, from middle to middle of its ends, in layers."""

from __future__ import annotations

import math

import pytest

from tests.operations.hole_steps import Step

SLOT = {"cutter": "slot drill 10 mm, 2 teeth, 30 mm out", "ends": "15, 25; 45, 25", "depth": "4", "layer": "1", "feed_per_tooth": "0.03", "open_ends": "closed", "spindle": "300 rpm"}  # fmt: skip
STEEL = {"material": "S235"}


def test_a_closed_slot_has_round_ends():
    """30 from middle to middle, 10 wide, 4 deep: (300 + π/4 × 100) × 4 mm³."""
    step = Step("slot", SLOT, **STEEL)
    assert step.value("volume") * 1e9 == pytest.approx((300 + math.pi / 4 * 100) * 4, rel=1e-6)
    (groove,) = step.shapes
    assert (groove.x1, groove.x2, groove.y1, groove.width) == pytest.approx((0.015, 0.045, 0.025, 0.010))


def test_layers_and_their_time():
    step = Step("slot", SLOT, **STEEL)
    assert step.value("layers") == 4
    assert step.value("cutting_time") == pytest.approx(4 * step.value("time_each"))
    assert step.value("width_of_cut") == pytest.approx(10e-3)


def test_a_cutter_in_a_slot_cuts_with_half_a_turn():
    """2 × 300 × 0.03 = 18 mm/min; 1 × 10 × 18 mm³/min."""
    step = Step("slot", SLOT, **STEEL)
    assert step.value("removal_rate") * 60e9 == pytest.approx(10 * 1 * 18)


def test_a_closed_one_needs_to_be_let_in_and_an_open_one_does_not():
    closed, opened = Step("slot", SLOT, **STEEL), Step("slot", {**SLOT, "open_ends": "both open"}, **STEEL)
    assert closed.kind.plays(closed.fields).closed
    assert not opened.kind.plays(opened.fields).closed
    assert closed.kind.plays(closed.fields).full_width
