"""HM-103 and HM-104 equal the scenario (demo-scenario sections 6 and 7): every figure that its tables print.

Where the scenario prints a cut's seconds and its pecks apart, each further stroke
is 3 s (section 3b prints 12 + 3).
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.holdings.all_holdings import rests_of, words_of
from jobsheet.machine.dial_readings import error_text
from jobsheet.reckoning.answers.readings import readings_of
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job

NAMES = {"103": "hm-103-pivot-block.yaml", "104": "hm-104-cover-plate.yaml"}

#: Op 10: 1.5 deep × 40 at 500 rpm and 240 mm/min; op 20, 30 and 50 are the same cut.
FACE = {
    "spindle_speed": (500, 60, 0.5),
    "cutting_speed": (79, 60, 0.5),
    "table_feed": (240, 60e3, 0.5),
    "handle_pace": (47, 60, 0.5),
    "width_of_cut": (40, 1e3, 0.001),
    "power": (546, 1, 0.5),
    "torque": (10.4, 1, 0.05),
    "torque_peak": (14.3, 1, 0.05),
}
FINISH = {"table_feed": (200, 60e3, 0.5), "handle_pace": (39, 60, 0.5), "power": (127, 1, 0.5)}
SPOT_IRON = {
    "spindle_speed": (800, 60, 0.5),
    "feed_per_turn": (0.06, 1e3, 0.0005),
    "effective_diameter": (8.4, 1e3, 0.005),
    "power": (258, 1, 0.5),
    "thrust": (1.29, 1e-3, 0.005),
    "lever_push": (88, 1, 0.5),
}
SPOT_SHEET = {
    "spindle_speed": (300, 60, 0.5),
    "feed_per_turn": (0.05, 1e3, 0.0005),
    "effective_diameter": (4, 1e3, 0.005),
    "thrust": (1.01, 1e-3, 0.005),
    "lever_push": (70, 1, 0.5),
}
PILOT_SHEET = {
    "spindle_speed": (1250, 60, 0.5),
    "cutting_speed": (12, 60, 0.5),
    "feed_per_turn": (0.03, 1e3, 0.0005),
    "torque": (0.37, 1, 0.005),
    "drill_strength_share": (46, 100, 0.5),
    "thrust": (0.54, 1e-3, 0.005),
    "lever_push": (38, 1, 0.5),
}
DRILL_SHEET = {
    "spindle_speed": (500, 60, 0.5),
    "cutting_speed": (10, 60, 0.5),
    "feed_per_turn": (0.10, 1e3, 0.0005),
    "pilot": (3, 1e3, 1e-6),
    "power": (137, 1, 0.5),
    "torque": (2.62, 1, 0.005),
    "thrust": (0.80, 1e-3, 0.005),
    "lever_push": (56, 1, 0.5),
    "time_each": (8 + 3, 1, 0.5),
    "strokes": (2, 1, 0),
}
WINDOW = {
    "spindle_speed": (300, 60, 0.5),
    "cutting_speed": (9.4, 60, 0.05),
    "table_feed": (48, 60e3, 0.5),
    "feed_per_tooth": (0.04, 1e3, 0.0005),
    "handle_pace": (9.4, 60, 0.05),
    "seconds_a_turn": (6.4, 1, 0.05),
}
OUTSIDE = {**WINDOW, "power": (17, 1, 0.5), "layers": (2, 1, 0), "width_of_cut": (2.0, 1e3, 1e-6)}
#: (sample, key) -> figure -> (as printed, factor from SI, half of the printed digit)
PRINTED = {
    ("103", "base-skin"): FACE,
    ("103", "front-skin"): FACE,
    ("103", "rear-rough"): FACE,
    ("103", "rear-finish"): FINISH,
    ("103", "end-c"): {
        "spindle_speed": (300, 60, 0.5),
        "table_feed": (60, 60e3, 0.5),
        "handle_pace": (12, 60, 0.5),
        "layers": (4, 1, 0),
        "width_of_cut": (1.0, 1e3, 1e-6),
        "power": (43, 1, 0.5),
        "torque": (1.36, 1, 0.005),
    },
    ("103", "top-rough"): FACE,
    ("103", "top-finish"): FINISH,
    ("103", "end-right"): {
        "spindle_speed": (300, 60, 0.5),
        "table_feed": (60, 60e3, 0.5),
        "layers": (4, 1, 0),
        "width_of_cut": (1.0, 1e3, 1e-6),
    },
    ("103", "step"): {
        "cutting_speed": (19, 60, 0.5),
        "spindle_speed": (300, 60, 0.5),
        "table_feed": (72, 60e3, 0.5),
        "handle_pace": (14, 60, 0.5),
        "layers": (3, 1, 0),
        "width_of_cut": (19.7, 1e3, 1e-6),
        "power": (258, 1, 0.5),
        "torque": (8.2, 1, 0.05),
        "last_power": (18, 1, 0.5),
        "in_plane_peak": (705, 1, 0.5),
        "lift": (533, 1, 0.5),
        "cutting_stiffness": (18.19, 1e-6, 0.05),
    },
    ("103", "find-b-c"): {"half_tip": (2.54, 1e3, 0.005)},
    ("103", "spot-threads"): SPOT_IRON,
    ("103", "drill-threads"): {
        "spindle_speed": (800, 60, 0.5),
        "feed_per_turn": (0.10, 1e3, 0.0005),
        "power": (265, 1, 0.5),
        "torque": (3.16, 1, 0.005),
        "thrust": (1.41, 1e-3, 0.005),
        "lever_push": (96, 1, 0.5),
        "time_each": (17 + 2 * 3, 1, 0.5),
        "strokes": (1 + 2, 1, 0),
        "hole_depth": (20, 1e3, 1e-6),
    },
    ("103", "tap"): {
        "torque": (2.8, 1, 0.05),
        "wrench_easy": (8.4, 1, 0.05),
        "tap_strength": (20, 1, 0.5),
        "percent_thread": (74, 100, 0.5),
    },
    ("103", "find-a-c"): {"half_tip": (2.54, 1e3, 0.005)},
    ("103", "spot-bore"): SPOT_IRON,
    ("103", "pilot"): {
        "spindle_speed": (800, 60, 0.5),
        "feed_per_turn": (0.10, 1e3, 0.0005),
        "power": (211, 1, 0.5),
        "torque": (2.52, 1, 0.005),
        "thrust": (1.24, 1e-3, 0.005),
        "lever_push": (85, 1, 0.5),
        "time_each": (40 + 5 * 3, 1, 0.5),
        "strokes": (1 + 5, 1, 0),
        "hole_depth": (50, 1e3, 1e-6),
    },
    ("103", "bore-12"): {
        "spindle_speed": (500, 60, 0.5),
        "feed_per_turn": (0.15, 1e3, 0.0005),
        "pilot": (6, 1e3, 1e-6),
        "power": (407, 1, 0.5),
        "torque": (7.77, 1, 0.005),
        "thrust": (0.86, 1e-3, 0.005),
        "lever_push": (60, 1, 0.5),
        "time_each": (44, 1, 0.5),
    },
    ("103", "bore-15-7"): {
        "spindle_speed": (300, 60, 0.5),
        "feed_per_turn": (0.20, 1e3, 0.0005),
        "pilot": (12, 1e3, 1e-6),
        "power": (267, 1, 0.5),
        "torque": (8.51, 1, 0.005),
        "thrust": (0.61, 1e-3, 0.005),
        "lever_push": (43, 1, 0.5),
        "time_each": (56, 1, 0.5),
    },
    ("103", "chamfer"): {"effective_diameter": (17, 1e3, 1e-6), "pilot": (15.7, 1e3, 1e-6)},
    ("103", "ream"): {
        "spindle_speed": (190, 60, 0.5),
        "down_feed": (95, 60e3, 0.5),
        "ream_stock": (0.3, 1e3, 0.0005),
        "power": (40, 1, 0.5),
        "torque": (1.99, 1, 0.005),
    },
    ("104", "find-zero"): {"half_tip": (2.54, 1e3, 0.005), "wind_on": (4.54, 1e3, 0.005)},
    ("104", "spot"): SPOT_SHEET,
    ("104", "pilot"): PILOT_SHEET,
    ("104", "drill"): DRILL_SHEET,
    ("104", "spot-middle"): SPOT_SHEET,
    ("104", "pilot-middle"): PILOT_SHEET,
    ("104", "drill-middle"): DRILL_SHEET,
    ("104", "entry"): {
        "spindle_speed": (300, 60, 0.5),
        "feed_per_turn": (0.12, 1e3, 0.0005),
        "down_feed_by_hand": (36, 60e3, 0.5),
        "pilot": (6.5, 1e3, 1e-6),
        "power": (101, 1, 0.5),
        "torque": (3.20, 1, 0.005),
        "thrust": (0.60, 1e-3, 0.005),
        "lever_push": (42, 1, 0.5),
        "time_each": (13, 1, 0.5),
    },
    ("104", "window"): {
        **WINDOW,
        "power": (39, 1, 0.5),
        "torque": (1.25, 1, 0.005),
        "layers": (4, 1, 0),
        "cutting_stiffness": (9.0, 1e-6, 0.05),
    },
    ("104", "window-wall"): {
        **WINDOW,
        "power": (8, 1, 0.5),
        "layers": (1, 1, 0),
        "width_of_cut": (0.4, 1e3, 1e-6),
    },
    **{("104", f"outside-{side}"): OUTSIDE for side in ("front", "left", "rear", "right")},
}
#: Share of the spindle's continuous torque in per cent, and half of the printed digit.
SHARES = {
    ("103", "base-skin"): (29, 0.5), ("103", "front-skin"): (29, 0.5), ("103", "rear-rough"): (29, 0.5),
    ("103", "rear-finish"): (7, 0.5), ("103", "end-c"): (3, 0.5), ("103", "top-rough"): (29, 0.5),
    ("103", "top-finish"): (7, 0.5), ("103", "end-right"): (2, 0.5), ("103", "step"): (16, 0.5),
    ("103", "spot-threads"): (14, 0.5), ("103", "drill-threads"): (14, 0.5), ("103", "pilot"): (11, 0.5),
    ("103", "bore-12"): (22, 0.5), ("103", "bore-15-7"): (16, 0.5), ("103", "ream"): (2, 0.5),
    ("104", "drill"): (7, 0.5), ("104", "drill-middle"): (7, 0.5), ("104", "entry"): (6, 0.5),
    ("104", "window"): (2, 0.5), ("104", "window-wall"): (0.5, 0.05), ("104", "outside-front"): (1, 0.5),
    ("104", "outside-right"): (1, 0.5),
}  # fmt: skip


@pytest.fixture(scope="module")
def jobs():
    from jobsheet.paths import sample_jobs

    return {number: read_job(sample_jobs() / name) for number, name in NAMES.items()}


@pytest.fixture(scope="module")
def outcomes(jobs):
    return {number: Reckoner().reckon(job).operations for number, job in jobs.items()}


def limit_of(outcome, name):
    return next(one for one in outcome.limits if one.name == name)


@pytest.mark.parametrize(
    ("where", "figure"), [(where, figure) for where, figures in PRINTED.items() for figure in figures]
)
def test_figure(outcomes, where, figure):
    number, key = where
    printed, factor, tolerance = PRINTED[where][figure]
    figures = outcomes[number][key].figures
    if figure == "down_feed_by_hand":  # printed as a feed, but through the lever: it is feed per turn × speed
        value = figures.value("feed_per_turn") * figures.value("spindle_speed")
    else:
        value = figures.value(figure)
    assert value is not None
    assert value * factor == pytest.approx(printed, abs=tolerance + 1e-9)


@pytest.mark.parametrize("where", sorted(SHARES))
def test_share_of_the_spindle(outcomes, where):
    number, key = where
    printed, tolerance = SHARES[where]
    assert limit_of(outcomes[number][key], "spindle-torque").share * 100 == pytest.approx(
        printed, abs=tolerance
    )


def test_the_peak_of_the_rough_face_is_a_third_of_the_belt(outcomes):
    """Op 10: peak 14.3 N·m, 32 % of 45."""
    outcome = outcomes["103"]["base-skin"]
    assert outcome.figures.value("torque_peak") / 45 == pytest.approx(0.32, abs=0.005)
    assert find_card("knee-mill-k-2").spindle.ranges[1].cap.value == pytest.approx(45)


def test_the_last_cut_on_the_wall_of_the_step_asks_one_per_cent(outcomes):
    found = outcomes["103"]["step"]
    share = found.figures.value("last_torque") / limit_of(found, "spindle-torque").capacity
    assert share * 100 == pytest.approx(1, abs=0.5)


def test_metal_to_remove_of_the_casting(outcomes):
    """About 61 cm³ (61.5) are the six faces alone, 86 × 56 × 46 less 80 × 50 × 40;
    the step is 12 more, the holes 11.
    """
    faces = {"base-skin", "base-clean", "front-skin", "front-clean", "rear-rough", "rear-finish", "top-rough", "top-finish", "end-c", "end-right"}  # fmt: skip
    volumes = {key: (found.figures.value("volume") or 0) * 1e6 for key, found in outcomes["103"].items()}
    # Air that is counted and not there: end C is run out 2.6 mm below the base, and the top is faced over the
    # 3 mm of that end, since the size of the work before solids knows only what facing takes off.
    air = (3 * 50 * 2.6 + 3 * 50 * 3.4) * 1e-3
    assert sum(volumes[key] for key in faces) - air == pytest.approx((86 * 56 * 46 - 80 * 50 * 40) * 1e-3)
    assert volumes["step"] == pytest.approx(12.0)


@pytest.mark.parametrize(
    ("number", "key", "wanted", "grip"),
    [("103", "step", 2.21, 3.80), ("104", "window", 0.67, 8.0)],
)
def test_holding(outcomes, number, key, wanted, grip):
    """HM-103: 705 N and 533 N, × 2.5, mu 0.096 for iron; HM-104: four straps of
    half 16.7 kN, mu 0.12, two faces.
    """
    found = limit_of(outcomes[number][key], "holding")
    assert found.demand / 1e3 == pytest.approx(wanted, abs=0.005)
    assert found.capacity / 1e3 == pytest.approx(grip, abs=0.005 if number == "103" else 0.05)
    assert (found.verdict, found.sentence) == ("expected", "grip enough")


@pytest.mark.parametrize(
    ("number", "key", "asked", "level"), [("103", "step", 18.19, 30), ("104", "window", 9.0, 12.2)]
)
def test_what_is_asked_of_the_frame_and_what_its_class_gives(outcomes, number, key, asked, level):
    """Section 6, by the direction of the force: 18.19 of a class value of 30 with this cutter; section 7: 9.0
    of 12.2. Neither was tried there, and not nine of ten carry it.
    """
    found = limit_of(outcomes[number][key], "chatter")
    assert found.demand / 1e6 == pytest.approx(asked, abs=0.05)
    assert found.capacity / 1e6 == pytest.approx(level, abs=0.5 if level == 30 else 0.05)
    assert found.verdict == "not tried"
    assert found.sentence.startswith("not tried on this machine: begin at")


def test_the_step_asks_most_of_the_frame_in_hm_103(outcomes):
    asked = {key: found.figures.value("cutting_stiffness") or 0 for key, found in outcomes["103"].items()}
    assert max(asked, key=asked.get) == "step"


def test_why_1_mm_layers(jobs):
    """2 mm asks 17.9 N/µm with the 10 mm cutter, 30 out, where the class value is 12.2; 1 mm asks 9.0."""
    deep = Reckoner().reckon(SetField("window", "layer", "2").apply(jobs["104"])).operations["window"]
    found = limit_of(deep, "chatter")
    assert found.demand / 1e6 == pytest.approx(17.9, abs=0.05)
    assert found.capacity / 1e6 == pytest.approx(12.2, abs=0.05)
    assert found.share > 1


def _without(job, *keys):
    for key in keys:
        job = DeleteSteps((key,)).apply(job)
    return job


def test_why_the_pilot_of_hm_103(jobs):
    """15.7 from solid at 0.20 asks 24.8 N·m (47 %) and 5.3 kN, a lever push of 356 N; the hand gives 200."""
    solid = _without(jobs["103"], "pilot", "bore-12")
    drill = replace(
        solid,
        set_ups=tuple(
            replace(
                set_up,
                operations=tuple(
                    _as_drill(one) if one.key == "bore-15-7" else one for one in set_up.operations
                ),
            )
            for set_up in solid.set_ups
        ),
    )
    found = Reckoner().reckon(drill).operations["bore-15-7"]
    assert found.figures.value("torque") == pytest.approx(24.8, abs=0.05)
    assert found.figures.value("thrust") / 1e3 == pytest.approx(5.3, abs=0.05)
    assert found.figures.value("lever_push") == pytest.approx(356, abs=0.5)
    assert limit_of(found, "spindle-torque").share == pytest.approx(0.47, abs=0.005)
    assert (found.governing.name, found.governing.verdict) == ("quill-push", "beyond")


def _as_drill(operation):
    """The same hole from solid: an enlarging step does not begin without a hole."""
    from jobsheet.operations.registry import kind

    fields = operation.fields
    made = kind("drill").fields(
        cutter=fields.cutter, at=fields.at, depth=fields.depth, feed=fields.feed, spindle=fields.spindle
    )
    return replace(operation, kind="drill", fields=made)


@pytest.mark.parametrize(
    ("diameter", "feed", "speed", "thrust", "push"),
    [("6.5", "0.10", "500 rpm", 2.61, 178), ("9.0", "0.12", "300 rpm", 4.11, 278)],
)
def test_why_the_pilots_of_hm_104(diameter, feed, speed, thrust, push):
    """6.5 from solid asks 2.61 kN (178 N), 9.0 4.11 kN (278 N).

    Above the strong push of 200 N is only the 9.0: 178 N is below it, so 6.5 from solid is tight (over the
    comfortable 100 N), not beyond. The scenario's sentence says "above" of both; its own figures say this.
    """
    from tests.operations.hole_steps import Step, check

    texts = {"cutter": f"drill {diameter}", "depth": "through", "feed": feed, "spindle": speed}
    step = Step("drill", texts, material="304", thickness=0.004)
    check(step, {"thrust": (thrust, 1e-3, 0.005), "lever_push": (push, 1, 0.5)})
    if diameter == "9.0":  # with a comfortable 100 N the feed would fall to 0.015: rubbing
        check(step, {"feed_at_easy_push": (0.015, 1e3, 0.0005)})
    from jobsheet.limits.register import limits_of

    verdict = next(one for one in limits_of(step.figures, step.setting) if one.name == "quill-push").verdict
    assert verdict == ("beyond" if push > 200 else "tight")


def test_the_choice_of_speed_of_hm_104(jobs):
    """Calculated 477 rpm lies between 300 (9.4 m/min) and 500 (15.7 m/min); 500
    is 5 % above what was asked for.
    """
    from jobsheet.reckoning.answers.speeds import neighbours_of

    job = jobs["104"]
    for name, text in (
        ("feed", ""),
        ("feed_per_tooth", "0.04"),
        ("spindle", ""),
        ("cutting_speed", "15 m/min"),
    ):
        job = SetField("window", name, text).apply(job)
    found = Reckoner().reckon(job)
    wanted = found.operations["window"].figures.value("wanted_speed") * 60
    assert wanted == pytest.approx(477, abs=0.5)
    around = neighbours_of(job.find("window")[1], found.settings["window"])
    assert [(one.marked, one.cutting_shown) for one in (around.at, around.above)] == [
        ("300", "9.4 m/min"),
        ("500", "15.7 m/min"),
    ]
    assert around.above.over == pytest.approx(0.05, abs=0.005)
    assert all(one.share < 0.1 for one in (around.at, around.above))  # torque has no say in it


def test_003_a_tooth_would_be_wound_too_slowly(jobs):
    """At 0.03 a tooth the handle takes 8.5 s a turn: the planted 36 mm/min of op 60."""
    found = Reckoner().reckon(SetField("window", "feed", "36").apply(jobs["104"])).operations["window"]
    assert found.figures.value("feed_per_tooth") * 1e3 == pytest.approx(0.03, abs=0.0005)
    assert found.figures.value("seconds_a_turn") == pytest.approx(8.5, abs=0.05)
    assert limit_of(found, "hand-pace").verdict == "tight"


#: key -> for each place (drawing, turns + dial, line, error in mm) of x and of y, as printed.
X15, Y12, Y38 = (
    ("15", "2 + .1906", 191, "+0.011"),
    ("12", "2 + .0724", 72, "−0.011"),
    ("38", "7 + .0961", 96, "−0.002"),
)
X40, Y22 = ("40", "7 + .1748", 175, "+0.005"), ("22", "4 + .0661", 66, "−0.004")
LOW, X112, Y72 = (
    ("8", "1 + .1150", 115, "+0.001"),
    ("112", "22 + .0094", 9, "−0.011"),
    ("72", "14 + .0346", 35, "+0.009"),
)
X80, Y30, Y50 = (
    ("80", "15 + .1496", 150, "+0.010"),
    ("30", "5 + .1811", 181, "−0.003"),
    ("50", "9 + .1685", 169, "+0.013"),
)
POSITIONS = {
    **{("103", key): [(X15, Y12), (X15, Y38)] for key in ("spot-threads", "drill-threads", "tap")},
    **{("103", key): [(X40, Y22)] for key in ("spot-bore", "pilot", "bore-12", "bore-15-7", "chamfer", "ream")},
    **{("104", key): [(LOW, LOW), (X112, LOW), (X112, Y72), (LOW, Y72)] for key in ("spot", "pilot", "drill")},
    ("104", "window-wall"): [(X40, Y30), (X40, Y50), (X80, Y50), (X80, Y30)],
}  # fmt: skip


@pytest.mark.parametrize("where", sorted(POSITIONS))
def test_position_table(jobs, where):
    """Sections 6 and 7: every cell, with the drawing's size behind."""
    number, key = where
    job = jobs[number]
    set_up, _ = job.find(key)
    found = {one.key: one for one in readings_of(set_up, Reckoner().reckon(job), find_card(job.machine))}[key]
    cells = [
        tuple((one.drawing, one.dial, one.reading.line, error_text(one.error)) for one in (at.x, at.y))
        for at in found.places
    ]
    assert cells == POSITIONS[where]


def test_a_whole_turn_that_is_nearly_there_is_said(jobs):
    """112 mm = 22 turns + .0094: the easiest place to lose one."""
    set_up = jobs["104"].set_ups[0]
    found = {
        one.key: one
        for one in readings_of(set_up, Reckoner().reckon(jobs["104"]), find_card("knee-mill-k-2"))
    }
    assert "X 112: nearly on whole turn 22: an easy place to lose one" in found["drill"].warnings


def test_the_window_s_walls_are_half_a_cutter_outside_its_centre_line(jobs):
    """X 35 = 40 − 5, 85 = 80 + 5, Y 25 = 30 − 5, 55 = 50 + 5; before the last
    round the centre runs 40.4 to 79.6.
    """
    from jobsheet.operations.registry import kind

    for key, out in (("window-wall", 0.0), ("window", 0.4)):
        _, operation = jobs["104"].find(key)
        corners = operation.fields.around
        xs, ys = zip(*corners, strict=True)
        assert [min(xs) * 1e3, max(xs) * 1e3] == pytest.approx([40 + out, 80 - out])
        assert [min(ys) * 1e3, max(ys) * 1e3] == pytest.approx([30 + out, 50 - out])
    (recess,) = kind("pocket").sweep(jobs["104"].find("window-wall")[1].fields, None)
    assert [(recess.x - recess.length / 2) * 1e3, (recess.x + recess.length / 2) * 1e3] == pytest.approx(
        [35, 85]
    )
    assert [(recess.y - recess.width / 2) * 1e3, (recess.y + recess.width / 2) * 1e3] == pytest.approx(
        [25, 55]
    )
    assert recess.radius * 1e3 == pytest.approx(5)


def test_drill_size_before_the_reamer(jobs):
    """16 − (0.2 to 0.3 + 0.05 for drill oversize) = 15.65 to 15.75: 15.7 lies
    between, and the table of stock agrees.
    """
    from jobsheet.catalog.tools.reaming import reaming_stock

    drill = jobs["103"].find("bore-15-7")[1].fields.cutter.diameter * 1e3
    assert 16 - 0.3 - 0.05 <= drill <= 16 - 0.2 - 0.05
    usual = reaming_stock(16e-3)
    assert usual.low <= (16 - drill) * 1e-3 + 1e-9
    assert (16 - drill) * 1e-3 <= usual.high + 1e-9


@pytest.mark.parametrize("number", sorted(NAMES))
def test_nothing_is_beyond_and_the_plan_has_no_remark(jobs, outcomes, number):
    from jobsheet.review.engine import review

    for outcome in outcomes[number].values():
        assert not outcome.problem
        assert all(limit.verdict == "expected" or limit.name == "chatter" for limit in outcome.limits)
    assert review(jobs[number], Reckoner().reckon(jobs[number])) == ()


@pytest.mark.parametrize("number", sorted(NAMES))
def test_every_operation_of_the_scenario_is_there_in_its_order(jobs, number):
    """By their numbers; what the scenario writes in one row stands in steps of their own between them."""
    numbers = [operation.number for _, operation in jobs[number].operations()]
    assert numbers == sorted(numbers)
    assert set(range(10, 160 if number == "103" else 100, 10)) <= set(numbers)


def test_reminders_of_the_scenario_that_are_the_job_s_own_words(jobs):
    """Printed in sections 6 and 7: what no note says by itself stands in the job."""

    def words(job):
        found = [job.why, job.note, job.also_fetch]
        for set_up in job.set_ups:
            found += [rests_of(set_up.holding), set_up.holding.note, words_of(set_up.holding)]
        return " ".join(
            found + [f"{one.fields.what} {one.fields.note}" for _, one in job.operations()]
        ).casefold()

    pivot, cover = words(jobs["103"]), words(jobs["104"])
    for said in ("extraction on", "wipe the slides", "under the skin", "round bar", "without moving the table",
                 "never turn a reamer backward", "clear the chips out of the blind hole", "two people", "listen to the first layer"):  # fmt: skip  # at which size, its row says
        assert said in pivot, said
    for said in ("sharp sheet: gloves to handle it, off before", "backed all over", "dwells in stainless", "slug",
                 "never free it with the spindle turning", "one at a time", "slow handle", "keep moving", "before unscrewing"):  # fmt: skip
        assert said in cover, said
