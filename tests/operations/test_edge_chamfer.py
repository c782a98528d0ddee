"""Chamfers: the triangle that comes off an edge, and where the tip of the cutter stands for it."""

from __future__ import annotations

import math

import pytest

from tests.operations.hole_steps import Step, refusal

BROKEN = {"cutter": "chamfer mill 10 mm, 90°, 4 teeth", "size": "0.5", "edges": "all round the top", "feed_per_tooth": "0.03", "spindle": "300 rpm"}  # fmt: skip
STEEL = {"material": "S235"}


def test_all_round_is_the_rim_of_the_work_and_one_edge_its_length():
    """100 × 60: 320 round; a triangle of half of 0.5 × 0.5 along it is 40 mm³."""
    step = Step("edge-chamfer", BROKEN, **STEEL)
    assert step.value("path_length") == pytest.approx(0.320)
    assert step.value("volume") * 1e9 == pytest.approx(0.5 * 0.5 / 2 * 320)
    assert Step("edge-chamfer", {**BROKEN, "edges": "one edge", "along": "x"}, **STEEL).value(
        "path_length"
    ) == pytest.approx(0.1)
    assert Step("edge-chamfer", {**BROKEN, "length": "25"}, **STEEL).value("path_length") == pytest.approx(
        0.025
    )


@pytest.mark.parametrize(("angle", "height"), [("90°", 0.5), ("60°", 0.5 / math.tan(math.radians(30)))])
def test_the_tip_stands_a_millimetre_below_the_chamfer_unless_said(angle, height):
    """A cone as wide as twice its depth times the tangent of half its angle."""
    step = Step("edge-chamfer", {**BROKEN, "cutter": f"chamfer mill 10 mm, {angle}, 4 teeth"}, **STEEL)
    deep = 1.0 + height
    assert step.value("hole_depth") * 1e3 == pytest.approx(deep)
    assert step.value("effective_diameter") * 1e3 == pytest.approx(
        2 * deep * math.tan(math.radians(float(angle[:-1]) / 2))
    )


def test_a_cutter_that_is_not_wide_enough_there_is_refused():
    assert "less: the cutter is 10 mm across" in refusal("edge-chamfer", {**BROKEN, "below": "6"}, **STEEL)


def test_it_leaves_a_bevel_of_its_size():
    assert Step("edge-chamfer", BROKEN, **STEEL).shapes[0].size == pytest.approx(0.5e-3)
