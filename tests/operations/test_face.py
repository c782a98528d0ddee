"""Facing: passes side by side over the whole face, and the layer that comes off."""

from __future__ import annotations

import math

import pytest

from jobsheet.operations.kinds.face import KIND
from tests.operations.hole_steps import Step, refusal

FACE = {"cutter": "face mill 50 mm, 4 teeth, carbide", "depth": "0.5", "width": "30", "feed_per_tooth": "0.05", "along": "x", "spindle": "300 rpm"}  # fmt: skip
STEEL = {"material": "S235"}


def test_feed_is_teeth_times_turns_times_the_feed_of_a_tooth():
    """4 × 300 × 0.05 = 60 mm/min."""
    assert Step("face", FACE, **STEEL).value("table_feed") * 60e3 == pytest.approx(60)


def test_metal_in_a_minute_is_depth_times_width_times_feed():
    step = Step("face", FACE, **STEEL)
    assert step.value("removal_rate") * 1e9 * 60 == pytest.approx(0.5 * 30 * 60)


@pytest.mark.parametrize(
    ("along", "width", "passes"), [("x", "30", 2), ("x", "20", 3), ("y", "50", 2), ("x", "50", 2)]
)
def test_as_many_passes_as_cover_the_face(along, width, passes):
    """The work is 100 × 60: across a feed along x there are 60, along y 100."""
    assert Step("face", {**FACE, "along": along, "width": width}, **STEEL).value("passes") == passes


def test_layers_are_as_deep_as_is_said_at_most():
    step = Step("face", {**FACE, "depth": "1.2", "layer": "0.5"}, **STEEL)
    assert step.value("passes") == 2 * math.ceil(1.2 / 0.5)
    assert step.value("cutting_time") == pytest.approx(step.value("passes") * step.value("time_each"))


def test_the_whole_top_is_lower_afterwards():
    step = Step("face", FACE, **STEEL)
    assert step.shapes[0].depth == KIND.takes_off(step.fields) == pytest.approx(0.5e-3)
    assert step.value("volume") == pytest.approx(0.1 * 0.06 * 0.5e-3)


def test_a_pass_wider_than_the_cutter_is_refused():
    assert "at most the cutter" in refusal("face", {**FACE, "width": "51"}, **STEEL)
