"""Spot drills by diameter and by depth; demo-scenario sections 5, 6 and 7 (HM-102, HM-103, HM-104)."""

from __future__ import annotations

import math

import pytest

from tests.operations.hole_steps import Step, check, refusal

SPOT = {"cutter": "spot drill 10 mm, 90°"}


def test_hm102_operation_50_spots_to_8():
    step = Step("spot-drill", {**SPOT, "to": "8", "feed": "0.10", "spindle": "1250 rpm"}, material="6082-T6")
    check(step, {
        "power": (216, 1, 0.5), "torque": (1.65, 1, 0.005), "share": (12, 1, 0.5), "thrust": (0.65, 1e-3, 0.005),
        "lever_push": (45, 1, 0.5), "time_each": (4, 1, 0.5),
    })  # fmt: skip


def test_hm103_operation_80_spots_to_the_chamfer_of_a_tapped_hole():
    texts = {**SPOT, "to": "8.4", "feed": "0.06", "spindle": "800 rpm"}
    step = Step("spot-drill", texts, material="EN-GJL-250", fluid="dry")
    check(step, {
        "power": (258, 1, 0.5), "share": (14, 1, 0.5), "thrust": (1.29, 1e-3, 0.005), "lever_push": (88, 1, 0.5),
    })  # fmt: skip


def test_hm104_operation_30_spots_stainless_sheet():
    texts = {"cutter": "spot drill 8 mm, 120°", "to": "4", "feed": "0.05", "spindle": "300 rpm"}
    step = Step("spot-drill", texts, material="304", thickness=0.004)
    check(step, {"thrust": (1.01, 1e-3, 0.005), "lever_push": (70, 1, 0.5)})


@pytest.mark.parametrize(
    ("cutter", "diameter", "depth"), [("90°", 6.4, 3.2), ("120°", 8.0, 2.309), ("142°", 10.0, 1.722)]
)
def test_diameter_and_depth_say_the_same(cutter, diameter, depth):
    """Spot depth: 90° half of the diameter, 120° 0.289 of it, 142° 0.172 (cutting-data section 4.4)."""
    texts = {"cutter": f"spot drill 12 mm, {cutter}", "feed": "0.05"}
    wide = Step("spot-drill", {**texts, "to": f"{diameter}"}, material="S235")
    assert wide.value("hole_depth") * 1e3 == pytest.approx(depth, abs=0.0006)
    deep = Step("spot-drill", {**texts, "depth": f"{depth}"}, material="S235")
    assert deep.value("effective_diameter") * 1e3 == pytest.approx(diameter, abs=0.003)
    assert deep.value("torque") == pytest.approx(wide.value("torque"), rel=1e-3)


def test_the_row_says_both_whichever_was_typed():
    texts = {**SPOT, "feed": "0.05", "at": "circle of 6 on 40 around 50, 30"}
    wide = Step("spot-drill", {**texts, "to": "6.4 mm"}, material="S235").row
    assert wide.do == "Spot 6 holes to ⌀6.4"
    assert "3.20 mm to the tip" in wide.note
    deep = Step("spot-drill", {**texts, "depth": "3.2"}, material="S235").row
    assert deep.do == "Spot 6 holes 3.2 deep"
    assert "⌀6.40 mm at the surface" in deep.note
    assert (wide.depth, deep.depth) == ("3.2", "3.2")


def test_a_spot_is_a_cone_and_no_pilot():
    step = Step("spot-drill", {**SPOT, "to": "8", "feed": "0.1"}, material="S235")
    (cone,) = step.shapes
    assert (cone.diameter, cone.depth, cone.point_angle) == (8e-3, 0.0, pytest.approx(math.pi / 2))
    assert step.holes == ()


def test_too_deep_is_reckoned_and_said():
    step = Step("spot-drill", {**SPOT, "depth": "6", "feed": "0.1"}, material="S235")
    assert step.value("effective_diameter") == pytest.approx(10e-3)
    assert "beyond its cone" in step.caveats()
    assert step.shapes[0].depth == pytest.approx(1e-3)


def test_a_spot_in_a_hole_that_is_there_is_said():
    step = Step("spot-drill", {**SPOT, "to": "8", "feed": "0.1"}, material="S235", pilot=5e-3)
    assert "A hole stands at these places already" in step.caveats()


def test_what_has_no_meaning_says_what_to_write():
    feed = {"feed": "0.1"}
    assert "such as 8 mm, or its depth" in refusal("spot-drill", {**SPOT, **feed}, material="S235")
    both = refusal("spot-drill", {**SPOT, **feed, "to": "8", "depth": "3"}, material="S235")
    assert both == "depth is “3”; it must be left empty where the diameter at the surface is written"
    wide = refusal("spot-drill", {**SPOT, **feed, "to": "12"}, material="S235")
    assert wide == "diameter at the surface is “12”; it must be at most the spot drill, 10 mm"
    sizeless = refusal("spot-drill", {"cutter": "spot drill", **feed, "to": "8"}, material="S235")
    assert sizeless.endswith("it must be written with its size")


def test_in_inches_the_stop_is_a_whole_thou():
    texts = {"cutter": "spot drill 3/8 in, 90°", "at": "0.5, 0.5", "depth": "0.125", "feed": "0.002"}
    step = Step("spot-drill", texts, material="S235", units="in")
    assert (step.row.depth, step.row.depth_unit) == ("0.125", "in")
    assert "⌀0.2500 in at the surface" in step.row.note
