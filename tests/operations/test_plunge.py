"""Plunging: the flat hole of an end mill that is fed straight down."""

from __future__ import annotations

import math

import pytest

from jobsheet.operations.kinds.plunge import SPEED_SHARE
from tests.operations.hole_steps import Step

PLUNGE = {"cutter": "slot drill 10 mm, 2 teeth", "depth": "4", "feed": "0.03", "spindle": "300 rpm"}
STEEL = {"material": "S235"}


def test_its_hole_is_as_wide_as_the_cutter_and_has_no_point():
    (hole,) = Step("plunge", PLUNGE, **STEEL).shapes
    assert (hole.diameter, hole.depth, hole.point_angle) == (pytest.approx(10e-3), pytest.approx(4e-3), None)


def test_metal_in_a_minute_is_its_area_times_its_feed():
    step = Step("plunge", PLUNGE, **STEEL)
    assert step.value("removal_rate") * 1e9 * 60 == pytest.approx(math.pi / 4 * 100 * 0.03 * 300)
    assert step.value("power") == pytest.approx(step.value("torque") * 2 * math.pi * 5)


def test_it_starts_slower_than_the_same_cutter_at_a_side():
    step = Step("plunge", PLUNGE, **STEEL)
    assert 0 < SPEED_SHARE < 1
    assert step.kind.plays(step.fields).speed_share == SPEED_SHARE


def test_every_place_has_its_hole():
    step = Step("plunge", {**PLUNGE, "at": "10, 10; 30, 10; 50, 10"}, **STEEL)
    assert len(step.shapes) == len(step.holes) == 3
    assert step.value("cutting_time") == pytest.approx(3 * step.value("time_each"))
