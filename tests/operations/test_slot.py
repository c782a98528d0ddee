"""Slotting: as wide as the cutter, from middle to middle of its ends, in layers."""

from __future__ import annotations

import math

import pytest
from msgspec.structs import replace

from jobsheet.operations.kinds import slot
from tests.operations.hole_steps import Step, refusal

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


@pytest.mark.parametrize(("ends", "length"), [("closed", 30), ("one open", 35), ("both open", 40)])
def test_an_open_end_is_run_out_by_the_cutters_radius(ends, length):
    """From 15 to 45 are 30 mm, and 5 mm for each open end of a cutter of 10; both open it leaves 4 × 10 × 40 mm³."""
    step = Step("slot", {**SLOT, "open_ends": ends}, **STEEL)
    assert step.value("path_length") * 1e3 == pytest.approx(length)
    round_ends = math.pi / 4 * 100 if ends == "closed" else 0
    assert step.value("volume") * 1e9 == pytest.approx(4 * (10 * length + round_ends))


def test_a_slot_goes_from_one_place_to_another_and_a_plunge_is_none():
    assert "two different places" in refusal("slot", {**SLOT, "ends": "15, 25; 15, 25"}, **STEEL)
    assert "two places, such as 25, 30; 75, 30" in refusal("slot", {**SLOT, "ends": "15, 25"}, **STEEL)
    assert Step("slot", {**SLOT, "ends": "15, 25; 15.1, 25"}, **STEEL).value("path_length") == pytest.approx(
        1e-4
    )


def test_a_slanted_way_is_as_long_as_it_is():
    """3, 4, 5: 30 across and 40 along are 50 mm."""
    assert Step("slot", {**SLOT, "ends": "10, 5; 40, 45"}, **STEEL).value("path_length") == pytest.approx(
        50e-3
    )


class Profile:
    """A section of the stock that says which way it was asked and what is there [m³]."""

    def __init__(self, there):
        self.there, self.asked = there, []

    def groove(self, along, length, diameter, depth, *, round_ends):
        self.asked.append((along, round_ends))
        return self.there


def volume(ends, there, open_ends="both open"):
    step = Step("slot", {**SLOT, "ends": ends, "open_ends": open_ends}, **STEEL)
    profile = Profile(there)
    setting = replace(step.setting, profile=profile)
    return slot._volume(step.fields, setting, 4e-3, slot._length(step.fields)) * 1e9, profile.asked


def test_of_round_bar_only_what_is_there_comes_out():
    """4 × 10 × (30 + 10) = 1600 mm³ of a full block; never more, and along the way that it goes."""
    assert volume("15, 25; 45, 25", 1200e-9) == (pytest.approx(1200), [(0, False)])
    assert volume("15, 25; 45, 25", 1700e-9) == (pytest.approx(1600), [(0, False)])
    assert volume("15, 25; 45, 25", None) == (pytest.approx(1600), [(0, False)])
    assert volume("25, 15; 25, 45", 1200e-9)[1] == [(1, False)]
    assert volume("15, 25; 45, 25", 1200e-9, "closed")[1] == [(0, True)]
    # Slanted it is asked of nothing: 4 × 10 × (50 + 10) mm³.
    assert volume("10, 5; 40, 45", 1e-9) == (pytest.approx(2400), [])
