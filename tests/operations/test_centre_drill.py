"""Centre drilling: the point ahead, the cone of 60° behind it."""

from __future__ import annotations

import math

import pytest

from jobsheet.limits.register import limits_of
from jobsheet.operations.registry import kind
from jobsheet.operations.shared.advice import table_feed_per_turn
from tests.operations.hole_steps import Step, refusal

CENTRE = {"cutter": "centre drill 3.15 mm", "feed": "0.04", "spindle": "1250 rpm"}


def test_the_depth_is_the_point_and_the_cone():
    """1.25 × 3.15 for the point, then (6.7 − 3.15) / (2 tan 30°) of cone."""
    step = Step("centre-drill", {**CENTRE, "to": "6.7"}, material="S235")
    cone = (6.7 - 3.15) / (2 * math.tan(math.radians(30)))
    assert step.value("hole_depth") * 1e3 == pytest.approx(1.25 * 3.15 + cone, abs=1e-6)


def test_diameter_and_depth_say_the_same():
    wide = Step("centre-drill", {**CENTRE, "to": "6.7"}, material="S235")
    depth = f"{wide.value('hole_depth') * 1e3:.6f}"
    deep = Step("centre-drill", {**CENTRE, "depth": depth}, material="S235")
    assert deep.value("effective_diameter") * 1e3 == pytest.approx(6.7, abs=1e-5)
    assert "7.01 mm to the tip" in wide.row.note
    assert "⌀6.70 mm at the surface" in deep.row.note


def test_it_asks_what_a_drill_of_that_diameter_asks():
    centre = Step("centre-drill", {**CENTRE, "to": "6.7"}, material="S235")
    drill = Step(
        "drill", {"cutter": "drill 6.7", "depth": "7", "feed": "0.04", "spindle": "1250 rpm"}, material="S235"
    )
    assert centre.value("torque") == pytest.approx(drill.value("torque"))
    assert centre.value("thrust") == pytest.approx(drill.value("thrust"))


def test_the_strength_is_that_of_its_point():
    centre = Step("centre-drill", {**CENTRE, "to": "6.7"}, material="S235")
    point = Step(
        "drill",
        {"cutter": "drill 3.15", "depth": "7", "feed": "0.04", "spindle": "1250 rpm"},
        material="S235",
    )
    for name in ("drill_strength", "drill_strength_share"):
        assert centre.value(name) == pytest.approx(point.value(name))


def test_words_and_shapes():
    step = Step("centre-drill", {**CENTRE, "to": "6.7", "at": "10, 25; 70, 25"}, material="S235")
    assert step.row.do == "Drill 2 centres 3.15, to ⌀6.7"
    assert sorted({shape.diameter for shape in step.shapes}) == [
        pytest.approx(3.15e-3),
        pytest.approx(6.7e-3),
    ]
    assert len(step.shapes) == 4
    assert step.holes == ()


@pytest.mark.parametrize(("depth", "says"), [("2", "Only the point goes in"), ("12", "beyond its cone")])
def test_too_shallow_and_too_deep_are_said(depth, says):
    assert says in Step("centre-drill", {**CENTRE, "depth": depth}, material="S235").caveats()


def test_what_has_no_meaning_says_what_to_write():
    assert "its diameter at the surface or its depth" in refusal("centre-drill", CENTRE, material="S235")
    both = refusal("centre-drill", {**CENTRE, "to": "6", "depth": "5"}, material="S235")
    assert both.endswith("left empty where the diameter at the surface is written")
    wide = refusal("centre-drill", {**CENTRE, "to": "12"}, material="S235")
    assert "about 7.88 mm: write another size of centre drill" in wide


def test_the_point_twists_off_under_what_the_point_takes():
    """The cone of 6.7 asks four times the torque of the point of 3.15; it does not go through the point."""
    centre = Step("centre-drill", {**CENTRE, "to": "6.7"}, material="S235")
    point = Step(
        "drill",
        {"cutter": "drill 3.15", "depth": "7", "feed": "0.04", "spindle": "1250 rpm"},
        material="S235",
    )
    asked, alone = (
        next(one for one in limits_of(step.figures, step.setting) if one.name == "drill-torsion")
        for step in (centre, point)
    )
    assert asked.share == pytest.approx(alone.share)
    assert asked.demand == pytest.approx(centre.value("point_torque"))
    assert centre.value("torque") > 3 * centre.value("point_torque")


@pytest.mark.parametrize(("point", "feed"), [(1, 0.008), (1.6, 0.0162), (3.15, 0.0447)])
def test_the_feed_that_is_offered_goes_by_the_point(point, feed):
    """Holding and more kinds, C3: 0.008 D^1.5 takes half of what the point
    carries; the cone does not count.
    """
    step = Step(
        "centre-drill",
        {**CENTRE, "cutter": f"centre drill {point} mm", "to": f"{2 * point}"},
        material="S235",
    )
    plays = kind("centre-drill").plays(step.fields)
    offered = table_feed_per_turn(plays.feed, step.fields.cutter, step.setting)
    assert offered.value * 1e3 == pytest.approx(feed, rel=0.03)
    assert offered.source == "estimate"
