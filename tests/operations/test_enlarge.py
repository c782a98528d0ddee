"""Enlarging holes; demo-scenario HM-103 operations 110 to 130 and HM-104 operations 30 and 50."""

from __future__ import annotations

import itertools
from pathlib import Path

import pytest

from jobsheet.cutting.drill_forces import drill_thrust, drill_torque, pilot_thrust, pilot_torque
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job
from tests.operations.hole_steps import Step, check, refusal

IRON = {"material": "EN-GJL-250", "fluid": "dry", "thickness": 0.050}
SHEET = {"material": "304", "thickness": 0.004}
TWELVE = {
    "power": (407, 1, 0.5), "torque": (7.77, 1, 0.005), "share": (22, 1, 0.5), "thrust": (0.86, 1e-3, 0.005),
    "lever_push": (60, 1, 0.5), "time_each": (44, 1, 0.5),
}  # fmt: skip


def test_hm103_operation_120_opens_6_to_12():
    texts = {"cutter": "drill 12.0", "depth": "through", "feed": "0.15", "spindle": "500 rpm"}
    check(Step("enlarge", texts, pilot=6e-3, **IRON), TWELVE)


def test_hm103_operation_130_opens_12_to_15_7():
    texts = {"cutter": "drill 15.7", "depth": "through", "feed": "0.20", "spindle": "300 rpm"}
    check(Step("enlarge", texts, pilot=12e-3, **IRON), {
        "power": (267, 1, 0.5), "torque": (8.51, 1, 0.005), "share": (16, 1, 0.5), "thrust": (0.61, 1e-3, 0.005),
        "lever_push": (43, 1, 0.5), "time_each": (56, 1, 0.5),
    })  # fmt: skip


def test_hm104_operation_30_opens_3_to_6_5():
    texts = {"cutter": "drill 6.5", "depth": "through", "feed": "0.10", "spindle": "500 rpm"}
    step = Step("enlarge", texts, pilot=3e-3, **SHEET)
    check(step, {
        "cutting_speed": (10, 60, 0.5), "power": (137, 1, 0.5), "torque": (2.62, 1, 0.005), "share": (7, 1, 0.5),
        "thrust": (0.80, 1e-3, 0.005), "lever_push": (56, 1, 0.5), "time_each": (8, 1, 0.5),
    })  # fmt: skip


def test_hm104_operation_50_opens_6_5_to_9():
    texts = {"cutter": "drill 9.0", "depth": "through", "feed": "0.12", "spindle": "300 rpm"}
    step = Step("enlarge", texts, pilot=6.5e-3, **SHEET)
    check(step, {
        "power": (101, 1, 0.5), "torque": (3.20, 1, 0.005), "share": (6, 1, 0.5), "thrust": (0.60, 1e-3, 0.005),
        "lever_push": (42, 1, 0.5), "time_each": (13, 1, 0.5),
    })  # fmt: skip


@pytest.mark.parametrize(
    ("texts", "around", "printed"),
    [
        (  # HM-103 operation 80: drilled from solid; two pecks between strokes are another 6 s
            {"cutter": "drill 6.8", "depth": "20", "feed": "0.10", "spindle": "800 rpm", "peck": "8"},
            IRON,
            {"power": (265, 1, 0.5), "torque": (3.16, 1, 0.005), "share": (14, 1, 0.5), "thrust": (1.41, 1e-3, 0.005),
             "lever_push": (96, 1, 0.5), "time_each": (17 + 6, 1, 0.5)},
        ),
        (  # HM-103 operation 110: 40 s and five pecks
            {"cutter": "drill 6.0", "depth": "through", "feed": "0.10", "spindle": "800 rpm", "peck": "10"},
            IRON,
            {"power": (211, 1, 0.5), "torque": (2.52, 1, 0.005), "share": (11, 1, 0.5), "thrust": (1.24, 1e-3, 0.005),
             "lever_push": (85, 1, 0.5), "time_each": (40 + 15, 1, 0.5), "strokes": (6, 1, 0)},
        ),
        (  # HM-104 operation 30: the pilot
            {"cutter": "drill 3.0", "depth": "through", "feed": "0.03", "spindle": "1250 rpm"},
            SHEET,
            {"cutting_speed": (12, 60, 0.5), "torque": (0.37, 1, 0.005), "drill_strength_share": (46, 100, 0.5),
             "thrust": (0.54, 1e-3, 0.005), "lever_push": (38, 1, 0.5)},
        ),
        (  # "Why the pilots": 9.0 from solid asks more than a strong push
            {"cutter": "drill 9.0", "depth": "through", "feed": "0.12", "spindle": "300 rpm"},
            SHEET,
            {"thrust": (4.11, 1e-3, 0.005), "lever_push": (278, 1, 0.5)},
        ),
        (  # "Why the pilot": 15.7 from solid
            {"cutter": "drill 15.7", "depth": "through", "feed": "0.20", "spindle": "300 rpm"},
            IRON,
            {"torque": (24.8, 1, 0.05), "share": (47, 1, 0.5), "thrust": (5.3, 1e-3, 0.05), "lever_push": (356, 1, 0.5)},
        ),
    ],
    ids=["6.8 solid", "6.0 solid", "3.0 solid", "9.0 solid", "15.7 solid"],
)  # fmt: skip
def test_the_drills_from_solid_that_stand_before_and_beside(texts, around, printed):
    check(Step("drill", texts, **around), printed)


def test_the_hole_of_the_step_before_is_found_at_the_same_place():
    """The chain of HM-103: pilot, twelve, then a core drill, each of which finds what the last one left."""
    outcomes = Reckoner().reckon(read_job(Path(__file__).parent / "jobs" / "enlarge.yaml")).operations
    assert outcomes["twelve"].figures.value("pilot") == pytest.approx(6e-3)
    assert outcomes["twelve"].figures.value("torque") == pytest.approx(7.77, abs=0.005)
    assert outcomes["core"].figures.value("pilot") == pytest.approx(12e-3)


def test_from_nothing_it_is_the_lips_of_a_drill():
    """A pilot of nothing leaves what a drill without a chisel edge asks (SO57 with x and y at nought)."""
    asked = {"kd": 20000.0, "feed": 0.1e-3, "diameter": 10e-3}
    assert pilot_torque(**asked, pilot=0.0) == pytest.approx(drill_torque(**asked, chisel_ratio=0.0))
    lips = drill_thrust(**asked, chisel_ratio=0.0)
    assert pilot_thrust(**asked, pilot=0.0) == pytest.approx(lips)


def test_a_pilot_lowers_thrust_and_the_larger_the_more():
    texts = {"cutter": "drill 12", "depth": "through", "feed": "0.15", "spindle": "500 rpm"}
    solid = Step("drill", texts, **IRON).value("thrust")
    pushes = [Step("enlarge", texts, pilot=hole, **IRON).value("thrust") for hole in (3e-3, 6e-3, 9e-3)]
    assert solid > 2 * pushes[0]
    assert pushes == sorted(pushes, reverse=True)


def test_more_edges_ask_a_little_more():
    """k_z = (z/2)^0.2: 1.15 for four (cutting-data section 1.5)."""
    texts = {"depth": "through", "feed": "0.15", "spindle": "300 rpm", "hole": "12"}
    two = Step("enlarge", {**texts, "cutter": "core drill 15.7, 2 edges"}, **IRON)
    four = Step("enlarge", {**texts, "cutter": "core drill 15.7, 4 edges"}, **IRON)
    assert four.value("torque") / two.value("torque") == pytest.approx(1.15, abs=0.005)
    assert four.value("thrust") / two.value("thrust") == pytest.approx(1.15, abs=0.005)


def test_edges_that_are_not_written_are_said():
    texts = {"cutter": "core drill 15.7", "depth": "through", "feed": "0.15", "hole": "12"}
    assert "not written: 3 are taken" in Step("enlarge", texts, **IRON).caveats()


def test_a_hole_narrower_than_the_chisel_edge_relieves_a_part_of_it():
    """Corrections, cutting-data 4.4: thrust falls evenly from that of solid metal as the
    hole grows to the chisel, 0.18 of 12.
    """
    texts = {"cutter": "drill 12", "depth": "through", "feed": "0.15", "spindle": "500 rpm"}
    chisel = 0.18 * 12e-3
    solid = Step("drill", texts, **IRON).value("thrust")
    opened = Step("enlarge", texts, pilot=chisel * 1.000001, **IRON).value("thrust")
    half = Step("enlarge", texts, pilot=chisel / 2, **IRON)
    assert half.value("thrust") == pytest.approx((solid + opened) / 2, rel=1e-4)
    assert "narrower than the chisel edge" in half.caveats()


@pytest.mark.parametrize("name", ["torque", "thrust", "lever_push", "feed_at_easy_push"])
def test_a_pilot_makes_no_step_as_it_grows(name):
    """From a pin-prick past the chisel edge: no hundredth of a millimetre
    changes anything by more than 3 %.
    """
    texts = {"cutter": "drill 12", "depth": "through", "feed": "0.4", "spindle": "320 rpm"}
    found = [Step("drill", texts, machine="bench-mill-b-1", **IRON).value(name)]
    found += [
        Step("drill", texts, pilot=hundredths * 1e-5, machine="bench-mill-b-1", **IRON).value(name)
        for hundredths in range(1, 400)
    ]
    for one, other in itertools.pairwise(found):
        assert other == pytest.approx(one, rel=0.03)


def test_words_and_what_it_leaves():
    texts = {
        "cutter": "drill 12 mm",
        "at": "row of 3 from 10, 10, step 20",
        "depth": "through",
        "feed": "0.15",
    }
    step = Step("enlarge", texts, pilot=6e-3, **IRON)
    assert step.row.do == "Enlarge 3 holes to 12, through"
    assert "opens the 6.00 mm hole" in step.row.note
    assert [hole.diameter for hole in step.holes] == [12e-3] * 3
    assert step.holes[0].depth is None


def test_without_a_hole_or_with_too_large_a_one_it_is_refused():
    texts = {"cutter": "drill 12", "depth": "through", "feed": "0.15"}
    assert "drilled at these places before this step, or typed here" in refusal("enlarge", texts, **IRON)
    large = refusal("enlarge", {**texts, "hole": "12"}, **IRON)
    assert large == "hole is 12 mm; it must be smaller than what is cut, 12 mm"


def test_it_answers_to_the_notes_of_a_drill():
    texts = {"cutter": "drill 12", "depth": "through", "feed": "0.15"}
    step = Step("enlarge", texts, pilot=6e-3, **IRON)
    assert {"drilling", "drill"} <= set(step.kind.groups)
    assert step.row.depth == "54.6"  # 50 + 3.6 of point + 1
