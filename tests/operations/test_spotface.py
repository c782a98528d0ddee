"""Spotfacing: reckoned as a counterbore, shallow or just to clean."""

from __future__ import annotations

import pytest

from tests.operations.hole_steps import Step, refusal

FACE = {"cutter": "counterbore 18 mm, 3 edges", "feed": "0.10", "spindle": "300 rpm", "hole": "8.4"}
IRON = {"material": "EN-GJL-250", "fluid": "dry"}


def test_its_forces_are_a_counterbores():
    face = Step("spotface", {**FACE, "depth": "1"}, **IRON)
    seat = Step("counterbore", {**FACE, "depth": "1"}, **IRON)
    for name in ("torque", "thrust", "power", "time_each"):
        assert face.value(name) == seat.value(name)


def test_just_to_clean_has_no_stop_and_says_what_its_time_is_for():
    step = Step("spotface", {**FACE, "at": "20, 25; 60, 25"}, **IRON)
    assert step.row.do == "Spotface 2 faces 18, just to clean"
    assert (step.row.depth, step.row.depth_unit) == ("", "to clean")
    assert step.dials[2].number == "to clean"
    assert "the time is for 0.5 mm" in step.caveats()


def test_a_depth_is_kept():
    step = Step("spotface", {**FACE, "depth": "1 mm"}, **IRON)
    assert step.row.do == "Spotface one face 18, 1 mm deep"
    assert step.row.depth == "1"
    assert step.shapes[0].depth == pytest.approx(1e-3)
    assert step.holes == ()


def test_what_is_deep_is_a_counterbore():
    assert "choose a counterbore" in Step("spotface", {**FACE, "depth": "9"}, **IRON).caveats()


def test_it_needs_a_hole():
    texts = {name: text for name, text in FACE.items() if name != "hole"}
    assert "drilled at these places before" in refusal("spotface", texts, **IRON)
