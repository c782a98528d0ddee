"""Side milling: cuts inward and layers down, as deep and as wide as is said at most."""

from __future__ import annotations

import math

import pytest

from tests.operations.hole_steps import Step, refusal

SIDE = {"cutter": "end mill 12 mm, 4 teeth, 30 mm out", "side": "right", "width": "2", "cut": "1", "depth": "6", "feed_per_tooth": "0.04", "way": "conventional", "spindle": "300 rpm"}  # fmt: skip
STEEL = {"material": "S235"}


def test_metal_in_a_minute_is_depth_times_cut_times_feed():
    """4 × 300 × 0.04 = 48 mm/min; 6 × 1 × 48 mm³/min."""
    step = Step("side-mill", SIDE, **STEEL)
    assert step.value("table_feed") * 60e3 == pytest.approx(48)
    assert step.value("removal_rate") * 60e9 == pytest.approx(6 * 1 * 48)


@pytest.mark.parametrize(
    ("change", "layers", "passes"),
    [({}, 1, 2), ({"layer": "2"}, 3, 6), ({"cut": ""}, 1, 1), ({"cut": "0.7"}, 1, 3)],
)
def test_as_many_passes_as_layers_times_cuts(change, layers, passes):
    step = Step("side-mill", {**SIDE, **change}, **STEEL)
    assert (step.value("layers"), step.value("passes")) == (layers, passes)


def test_mean_power_is_the_metal_of_a_minute_times_its_specific_force():
    """Pc = Q kc (cutting-data section 1.5), whatever the arc."""
    step = Step("side-mill", SIDE, **STEEL)
    assert step.value("power") == pytest.approx(
        step.value("removal_rate") * step.value("specific_force"), rel=0.02
    )
    assert step.value("torque") == pytest.approx(step.value("power") / (2 * math.pi * 5))


def test_the_side_is_lower_by_its_width_over_its_depth():
    (edge,) = Step("side-mill", SIDE, **STEEL).shapes
    assert (edge.side, edge.width, edge.depth) == ("right", pytest.approx(2e-3), pytest.approx(6e-3))


def test_more_than_the_cutter_is_wide_is_refused():
    assert "at most the cutter" in refusal("side-mill", {**SIDE, "width": "13", "cut": ""}, **STEEL)
