"""Fly cutting: one tooth, one pass, and a load that comes in blows."""

from __future__ import annotations

import pytest

from jobsheet.operations.kinds.fly_cut import KIND
from tests.operations.hole_steps import Step

FLY = {
    "cutter": "fly cutter 80 mm, carbide",
    "depth": "0.2",
    "feed_per_tooth": "0.1",
    "along": "x",
    "spindle": "300 rpm",
}
STEEL = {"material": "S235"}


def test_one_tooth_feeds_once_a_turn():
    step = Step("fly-cut", FLY, **STEEL)
    assert step.value("table_feed") * 60e3 == pytest.approx(300 * 0.1)
    assert step.figures.gaps, "between two cuts of its tooth nothing cuts"


def test_it_goes_over_the_middle_once_for_each_layer():
    assert Step("fly-cut", FLY, **STEEL).value("passes") == 1
    assert Step("fly-cut", {**FLY, "depth": "0.5", "layer": "0.2"}, **STEEL).value("passes") == 3


def test_the_whole_top_comes_off():
    step = Step("fly-cut", FLY, **STEEL)
    assert step.value("volume") == pytest.approx(0.1 * 0.06 * 0.2e-3)
    assert step.shapes[0].depth == KIND.takes_off(step.fields) == pytest.approx(0.2e-3)
