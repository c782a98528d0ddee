"""Countersinking: depth from diameter and angle, force at the full diameter, a quarter of a drill's speed."""

from __future__ import annotations

import math

import pytest

from tests.operations.hole_steps import Step, refusal

SINK = {"cutter": "countersink 25 mm, 90°, 3 edges", "to": "12.6", "feed": "0.10", "hole": "6.6"}


@pytest.mark.parametrize(("angle", "depth"), [(90, 3.0), (82, 3.451), (60, 5.196)])
def test_the_depth_follows_from_the_diameter_and_the_angle(angle, depth):
    """(12.6 − 6.6) / (2 tan(angle / 2)), counted from where the cone touches the rim."""
    step = Step("countersink", {**SINK, "cutter": f"countersink 25 mm, {angle}°, 3 edges"}, material="S235")
    assert step.value("hole_depth") * 1e3 == pytest.approx(depth, abs=0.0005)
    assert step.row.do == f"Countersink one hole to ⌀12.6, {angle}°"
    assert float(step.row.depth) == pytest.approx(depth, abs=0.005)


def test_its_forces_are_those_of_enlarging_to_the_full_diameter():
    sink = Step("countersink", {**SINK, "spindle": "190 rpm"}, material="S235")
    drilled = {
        "cutter": "core drill 12.6, 3 edges",
        "depth": "3",
        "feed": "0.10",
        "hole": "6.6",
        "spindle": "190 rpm",
    }
    wide = Step("enlarge", drilled, material="S235")
    assert sink.value("torque") == pytest.approx(wide.value("torque"))
    assert sink.value("thrust") == pytest.approx(wide.value("thrust"))


def test_it_starts_at_a_quarter_of_a_drill():
    """Cutting-data section 2.2: 25 % of the drill's speed, the same feed per turn."""
    sink = Step("countersink", SINK, material="S235")
    drill = Step("drill", {"cutter": "drill 12.6", "depth": "3", "feed": "0.1"}, material="S235")
    assert sink.value("wanted_speed") / drill.value("wanted_speed") == pytest.approx(0.25)


def test_hm103_operation_140_chamfers_the_bore_to_17():
    """Only the size is printed there: 15.7 to 17 is 0.65 deep at 90°."""
    texts = {"cutter": "countersink 25 mm, 90°", "to": "17", "feed": "0.10", "spindle": "190 rpm"}
    step = Step("countersink", texts, material="EN-GJL-250", fluid="dry", pilot=15.7e-3)
    assert step.value("hole_depth") * 1e3 == pytest.approx(0.65)
    assert "not written: 3 are taken" in step.caveats()
    assert step.share() < 10


def test_it_is_a_cone_and_the_hole_below_still_stands():
    step = Step("countersink", SINK, material="S235")
    (cone,) = step.shapes
    assert (cone.diameter, cone.depth) == (pytest.approx(12.6e-3), 0.0)
    assert cone.point_angle == pytest.approx(math.pi / 2)
    assert step.holes == ()


def test_what_has_no_meaning_says_what_to_write():
    wide = refusal("countersink", {**SINK, "to": "30"}, material="S235")
    assert wide == "diameter at the surface is “30”; it must be at most the countersink, 25 mm"
    narrow = refusal("countersink", {**SINK, "to": "6"}, material="S235")
    assert narrow == "hole is 6.6 mm; it must be smaller than what is cut, 6 mm"
    none = {name: text for name, text in SINK.items() if name != "hole"}
    assert "drilled at these places before" in refusal("countersink", none, material="S235")
