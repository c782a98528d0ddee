"""HM-101 and HM-102 equal the scenario (demo-scenario sections 4 and 5):
every figure that its tables print.
"""

from __future__ import annotations

import pytest

from jobsheet.machine.handles import dial_text, reading
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job

ROUGH = {
    "spindle_speed": (320, 60, 0.5),
    "cutting_speed": (20.1, 60, 0.05),
    "table_feed": (64, 60e3, 0.5),
    "handle_pace": (25.6, 60, 0.05),
    "seconds_a_turn": (2.3, 1, 0.05),
    "removal_rate": (0.82, 60e6, 0.005),
    "chip_thickness": (0.0361, 1e3, 0.00005),
    "specific_force": (3099, 1e-6, 0.5),
    "power": (42, 1, 0.5),
    "torque": (1.26, 1, 0.005),
    "torque_peak": (1.73, 1, 0.005),
    "in_plane_peak": (133, 1, 0.5),
    "lift": (100, 1, 0.5),
    "cutting_stiffness": (2.95, 1e-6, 0.005),
}
FINISH = {
    "table_feed": (51, 60e3, 0.5),
    "handle_pace": (20.4, 60, 0.1),
    "seconds_a_turn": (2.9, 1, 0.05),
    "power": (9, 1, 0.5),
}
END = {"power": (19, 1, 0.5), "cutting_stiffness": (2.18, 1e-6, 0.005), "table_feed": (51, 60e3, 0.5)}
#: (sample, key) -> figure -> (as printed, factor from SI, half of the printed digit)
PRINTED = {
    ("101", "face-1-rough"): ROUGH,
    ("101", "face-2-rough"): ROUGH,
    ("101", "face-1-finish"): FINISH,
    ("101", "face-3-finish"): FINISH,
    ("101", "end-5"): END,
    ("101", "end-6"): END,
    ("101", "chamfer"): {"handle_pace": (20, 60, 0.05), "spindle_speed": (560, 60, 0.5)},
    ("102", "edge-a"): {
        "power": (89, 1, 0.5),
        "torque": (0.68, 1, 0.005),
        "handle_pace": (49, 60, 0.5),
        "seconds_a_turn": (1.2, 1, 0.05),
    },
    ("102", "end-b"): {
        "power": (100, 1, 0.5),
        "torque": (0.76, 1, 0.005),
        "handle_pace": (39, 60, 0.5),
        "in_plane_peak": (248, 1, 0.5),
        "lift": (134, 1, 1.0),  # printed 134, ours 133.3: both computations of C1-C10 agree within 0.4 %
        "cutting_stiffness": (1.47, 1e-6, 0.005),
    },
    ("102", "find-zero"): {"half_tip": (2.54, 1e3, 0.005), "spindle_speed": (800, 60, 0.5)},
    ("102", "spot"): {
        "power": (216, 1, 0.5),
        "torque": (1.65, 1, 0.005),
        "thrust": (0.65, 1e-3, 0.005),
        "lever_push": (45, 1, 0.5),
        "time_each": (4, 1, 0.5),
    },
    ("102", "drill"): {
        "cutting_speed": (41, 60, 0.5),
        "power": (282, 1, 0.5),
        "torque": (1.35, 1, 0.005),
        "thrust": (0.60, 1e-3, 0.005),
        "lever_push": (42, 1, 0.5),
        "time_each": (4 + 3, 1, 0.7),  # printed in two rounded parts
    },
    ("102", "counterbore"): {
        "power": (89, 1, 0.5),
        "torque": (1.71, 1, 0.005),
        "thrust": (0.19, 1e-3, 0.005),
        "time_each": (13, 1, 0.5),
    },
    ("102", "slot-ends"): {"power": (214, 1, 0.5), "torque": (1.64, 1, 0.005), "thrust": (0.61, 1e-3, 0.006)},
    ("102", "slot"): {
        "power": (149, 1, 0.5),
        "torque": (0.71, 1, 0.005),
        "handle_pace": (31, 60, 0.6),
        "layers": (4, 1, 0),
    },
    ("102", "slot-front"): {
        "power": (42, 1, 0.5),
        "torque": (0.20, 1, 0.005),
        "cutter_stiffness": (3.03, 1e-6, 0.005),
        "wall_error": (-0.003, 1e3, 0.0005),
    },
    ("102", "end-right"): {"power": (100, 1, 0.5), "torque": (0.76, 1, 0.005)},
}
#: Share of the spindle's continuous torque in per cent, as printed.
SHARES = {
    ("101", "face-1-rough"): 9, ("101", "face-4-rough"): 9, ("101", "face-3-rough"): 9, ("101", "face-4-finish"): 2,
    ("101", "end-5"): 4, ("101", "end-6"): 4, ("102", "edge-a"): 5, ("102", "edge-opposite"): 5,
    ("102", "end-b"): 5, ("102", "spot"): 12, ("102", "drill"): 15, ("102", "counterbore"): 5, ("102", "slot-ends"): 11,
    ("102", "slot"): 8, ("102", "slot-front"): 2, ("102", "slot-rear"): 2, ("102", "end-right"): 5,
}  # fmt: skip
NAMES = {"101": "hm-101-setting-block.yaml", "102": "hm-102-slide-plate.yaml"}


@pytest.fixture(scope="module")
def outcomes():
    from jobsheet.paths import sample_jobs

    return {
        number: Reckoner().reckon(read_job(sample_jobs() / name)).operations for number, name in NAMES.items()
    }


@pytest.mark.parametrize(
    ("where", "figure"), [(where, figure) for where, figures in PRINTED.items() for figure in figures]
)
def test_figure(outcomes, where, figure):
    number, key = where
    printed, factor, tolerance = PRINTED[where][figure]
    value = outcomes[number][key].figures.value(figure)
    assert value is not None
    assert value * factor == pytest.approx(printed, abs=tolerance + 1e-9)


@pytest.mark.parametrize("where", sorted(SHARES))
def test_share_of_the_spindle(outcomes, where):
    number, key = where
    torque = next(one for one in outcomes[number][key].limits if one.name == "spindle-torque")
    assert torque.share * 100 == pytest.approx(SHARES[where], abs=0.5)


def test_the_chamfer_asks_half_of_what_the_scenario_prints(outcomes):
    """Printed 0.1 %: a square of 0.3 × 0.3. The triangle that is really cut has
    half its area, ours is 0.04 %.
    """
    torque = next(one for one in outcomes["101"]["chamfer"].limits if one.name == "spindle-torque")
    assert 0.03 < torque.share * 100 < 0.05


def test_metal_to_remove_and_minutes_of_hm_101(outcomes):
    """26.4 cm³ to remove; about 32 min in the cut at 0.82 cm³/min (that is without approach and overrun)."""
    volume = sum(
        outcome.figures.value("volume") or 0 for key, outcome in outcomes["101"].items() if key != "chamfer"
    )
    assert volume * 1e6 == pytest.approx(26.4, abs=0.3)
    assert volume * 1e6 / 0.82 == pytest.approx(32, abs=0.5)


def test_climbing_the_front_wall_would_leave_25_micrometres():
    """Section 5: conventional up to 0.003 mm left on; climb would leave 0.025."""
    from jobsheet.edit.commands import SetField
    from jobsheet.paths import sample_jobs

    job = SetField("slot-front", "way", "climb").apply(read_job(sample_jobs() / NAMES["102"]))
    figures = Reckoner().reckon(job).operations["slot-front"].figures
    assert abs(figures.value("wall_error")) * 1e3 == pytest.approx(0.025, abs=0.0005)
    assert any("metal left on" in caveat for caveat in figures.caveats)


@pytest.mark.parametrize(
    ("axis", "millimetres", "text", "turns", "line", "error"),
    [
        ("x", 10, "1 + .1937", 1, 194, 0.008),
        ("x", 90, "17 + .1433", 17, 143, -0.008),
        ("y", 50, "9 + .1685", 9, 169, 0.013),
        ("x", 25, "4 + .1843", 4, 184, -0.006),
        ("x", 75, "14 + .1528", 14, 153, 0.006),
        ("y", 30, "5 + .1811", 5, 181, -0.003),
        ("y", 29.5, "5 + .1614", 5, 161, -0.011),
        ("y", 30.5, "6 + .0008", 6, 1, 0.005),
    ],
)
def test_position_table_of_hm_102(axis, millimetres, text, turns, line, error):
    """Section 5, position table; errors as printed to a thousandth."""
    handle = find_card("knee-mill-k-2").handle(axis)
    found = reading(handle, millimetres * 1e-3)
    assert dial_text(handle, found) == text
    assert (found.line_turns, found.line) == (turns, line)
    assert found.error * 1e3 == pytest.approx(error, abs=0.0006)


def test_the_slot_comes_out_10_016_with_the_lines_of_the_table():
    handle = find_card("knee-mill-k-2").handle("y")
    front, rear = (reading(handle, place) for place in (29.5e-3, 30.5e-3))
    width = (30.5e-3 + rear.error) - (29.5e-3 + front.error) + 9e-3
    assert width * 1e3 == pytest.approx(10.016, abs=0.0006)


@pytest.mark.parametrize("number", sorted(NAMES))
def test_nothing_is_beyond_and_the_plan_has_no_remark(outcomes, number):
    from jobsheet.paths import sample_jobs
    from jobsheet.review.engine import review

    job = read_job(sample_jobs() / NAMES[number])
    for outcome in outcomes[number].values():
        assert not outcome.problem
        assert all(limit.verdict == "expected" or limit.name == "chatter" for limit in outcome.limits)
    assert review(job, Reckoner().reckon(job)) == ()


def test_speeds_that_hm_101_calculates():
    """398 rpm at the Trainer's 25 m/min, next step up 560; by the hand-fluid
    factor 21 m/min, 334, also 320.
    """
    from jobsheet.edit.commands import SetField
    from jobsheet.paths import sample_jobs
    from jobsheet.reckoning.answers.speeds import neighbours_of

    job = SetField("face-1-rough", "spindle", "").apply(read_job(sample_jobs() / NAMES["101"]))
    for asked, wanted in (("25 m/min", 398), ("", 334)):
        typed = SetField("face-1-rough", "cutting_speed", asked).apply(job)
        found = Reckoner().reckon(typed)
        figures = found.operations["face-1-rough"].figures
        assert figures.value("wanted_speed") * 60 == pytest.approx(wanted, abs=0.5)
        assert figures.value("spindle_speed") * 60 == pytest.approx(320)
        around = neighbours_of(typed.find("face-1-rough")[1], found.settings["face-1-rough"])
        assert around.above.marked == "560"


def test_2_5_deep_asks_9_22_of_the_frame():
    """Planted: depth 2.5 typed in op 20; it chattered at 7.55 / 1.32 (the
    verdict needs the log of section 3).
    """
    from jobsheet.edit.commands import SetField
    from jobsheet.paths import sample_jobs

    job = SetField("face-1-rough", "depth", "2.5").apply(read_job(sample_jobs() / NAMES["101"]))
    found = Reckoner().reckon(job).operations["face-1-rough"].figures
    assert found.value("cutting_stiffness") * 1e-6 == pytest.approx(9.22, abs=0.005)


def test_speed_that_hm_102_calculates():
    """Op 10: calculated 1910 rpm, set 1250: 120 m/min on 20 mm."""
    from jobsheet.edit.commands import SetField
    from jobsheet.paths import sample_jobs

    job = SetField("edge-a", "spindle", "").apply(read_job(sample_jobs() / NAMES["102"]))
    job = SetField("edge-a", "cutting_speed", "120 m/min").apply(job)
    figures = Reckoner().reckon(job).operations["edge-a"].figures
    assert figures.value("wanted_speed") * 60 == pytest.approx(1910, abs=0.5)
    assert figures.value("spindle_speed") * 60 == pytest.approx(1250)


def test_op_10_of_hm_102_at_300_is_59_turns():
    """Planted: 59 turns a minute is more than the hand keeps even, 21 % of hands
    jerk (section C1): 250 gives 49.
    """
    from jobsheet.edit.commands import SetField
    from jobsheet.paths import sample_jobs

    outcome = (
        Reckoner()
        .reckon(SetField("edge-a", "feed", "300").apply(read_job(sample_jobs() / NAMES["102"])))
        .operations["edge-a"]
    )
    assert outcome.figures.value("handle_pace") * 60 == pytest.approx(59, abs=0.5)
    assert next(one for one in outcome.limits if one.name == "hand-pace").chance == pytest.approx(
        0.21, abs=0.01
    )


def test_the_frame_of_hm_102(outcomes):
    """Op 30 asks 5.88 / 4 N/µm, a twentieth of its cutter wide or less; the slot asks most. Never
    tried on this machine, class value 20.

    20 is the class with its reference cutter of 12 mm, 30 out. The stiffer 20 mm, 45 out of op 30 leaves 30
    (section 6 prints that for the same cutter); ours says 30 there too, and 20 for the reference cutter.
    """
    from jobsheet.limits.each.chatter import CLASSES

    asked = {key: one.figures.value("cutting_stiffness") or 0 for key, one in outcomes["102"].items()}
    assert max(asked, key=asked.get) == "slot"
    chatter = next(one for one in outcomes["102"]["end-b"].limits if one.name == "chatter")
    assert chatter.demand * 1e-6 == pytest.approx(1.47, abs=0.005)
    assert (chatter.verdict, chatter.from_class) == ("expected", True)
    assert CLASSES["knee"] * 1e-6 == pytest.approx(20)
    assert chatter.capacity * 1e-6 == pytest.approx(30, abs=0.5)


def test_walls_of_hm_102_are_half_a_cutter_from_its_centre():
    """Front 25.00 = 29.50 − 4.50, rear 35.00 = 30.50 + 4.50; the readings stand on the row of each wall."""
    from jobsheet.paths import sample_jobs
    from jobsheet.reckoning.answers.readings import readings_of

    job = read_job(sample_jobs() / NAMES["102"])
    found = Reckoner().reckon(job)
    walls = {
        one.key: one.wall for one in readings_of(job.set_ups[2], found, find_card(job.machine)) if one.wall
    }
    assert walls["slot-front"].wall * 1e3 == pytest.approx(25.00)
    assert walls["slot-rear"].wall * 1e3 == pytest.approx(35.00)
    assert "X 14 + .1528 to 4 + .1843, Y 5 + .1614" in found.operations["slot-front"].rows[0].note
    assert "X 4 + .1843 to 14 + .1528, Y 6 + .0008" in found.operations["slot-rear"].rows[0].note
    # Conventional: the front wall towards −X, the rear wall towards +X.
    front, rear = (job.find(key)[1].fields.path.points for key in ("slot-front", "slot-rear"))
    assert front[1].x.value < front[0].x.value
    assert rear[1].x.value > rear[0].x.value
