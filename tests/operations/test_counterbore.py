"""Counterboring; demo-scenario HM-102 operation 70."""

from __future__ import annotations

from pathlib import Path

import pytest

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job
from tests.operations.hole_steps import Step, check, refusal

SEAT = {"cutter": "counterbore 11 mm, 3 edges", "depth": "6.5", "feed": "0.10", "spindle": "500 rpm"}
ALUMINIUM = {"material": "6082-T6", "pilot": 6.6e-3}


def test_hm102_operation_70():
    check(Step("counterbore", SEAT, **ALUMINIUM), {
        "power": (89, 1, 0.5), "torque": (1.71, 1, 0.005), "share": (5, 1, 0.5), "thrust": (0.19, 1e-3, 0.005),
        "time_each": (13, 1, 0.5),
    })  # fmt: skip


def test_hm102_operation_60_the_drill_before_it():
    texts = {"cutter": "drill 6.6", "depth": "through", "feed": "0.12", "spindle": "2000 rpm", "peck": "8"}
    check(Step("drill", texts, material="6082-T6"), {
        "cutting_speed": (41, 60, 0.5), "power": (282, 1, 0.5), "torque": (1.35, 1, 0.005), "share": (15, 1, 0.5),
        "thrust": (0.60, 1e-3, 0.005), "lever_push": (42, 1, 0.5), "time_each": (4 + 3, 1, 0.5),
    })  # fmt: skip


def test_its_hole_is_found_and_still_stands_for_what_follows():
    outcomes = Reckoner().reckon(read_job(Path(__file__).parent / "jobs" / "counterbore.yaml")).operations
    assert outcomes["seats"].figures.value("pilot") == pytest.approx(6.6e-3)
    step = Step("counterbore", SEAT, **ALUMINIUM)
    assert step.holes == ()  # a thread below the seat is cut in the 6.6, not in the 11


def test_words_stop_and_shape():
    step = Step("counterbore", {**SEAT, "at": "10, 10; 90, 10"}, **ALUMINIUM)
    assert step.row.do == "Counterbore 2 holes 11, 6.5 deep"
    assert step.row.depth == "6.5"
    assert "round the 6.60 mm hole" in step.row.note
    assert step.dials[2].note == "from where the edges touch the face"
    (first, _) = step.shapes
    assert (first.diameter, first.depth) == (pytest.approx(11e-3), pytest.approx(6.5e-3))
    assert first.point_angle is None


def test_it_starts_between_half_and_two_thirds_of_a_drill():
    texts = {name: text for name, text in SEAT.items() if name != "spindle"}
    seat = Step("counterbore", texts, **ALUMINIUM)
    drill = Step("drill", {"cutter": "drill 11", "depth": "6.5", "feed": "0.1"}, material="6082-T6")
    assert 0.5 <= seat.value("wanted_speed") / drill.value("wanted_speed") <= 0.6667


@pytest.mark.parametrize(
    ("guide", "says"), [("pilot 6.6 mm", ""), ("pilot 6.5", ""), ("pilot 5 mm", "loose")]
)
def test_the_guide_goes_into_the_hole(guide, says):
    caveats = Step(
        "counterbore", {**SEAT, "cutter": f"counterbore 11 mm, 3 edges, {guide}"}, **ALUMINIUM
    ).caveats()
    assert says in caveats
    assert ("loose" in caveats) == bool(says)


def test_what_has_no_meaning_says_what_to_write():
    thick = refusal("counterbore", {**SEAT, "cutter": "counterbore 11 mm, pilot 8 mm"}, **ALUMINIUM)
    assert thick == "pilot of the cutter is 8 mm; it must be at most the hole, 6.6 mm"
    assert "drilled at these places before" in refusal("counterbore", SEAT, material="6082-T6")
    assert "smaller than what is cut, 11 mm" in refusal("counterbore", {**SEAT, "hole": "12"}, **ALUMINIUM)
