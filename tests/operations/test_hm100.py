"""HM-100's figures equal the scenario's (demo-scenario section 3b): every number that its table prints.

The scenario is computed with the recommended models of cutting-data section 8; tolerances are half of the
last digit it prints.
"""

from __future__ import annotations

import pytest

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job

#: key -> figure -> (value as printed, factor from SI, tolerance = half of the printed digit)
PRINTED = {
    "face-rough": {
        "spindle_speed": (560, 60, 0.5),
        "cutting_speed": (88, 60, 0.5),
        "table_feed": (112, 60e3, 0.5),
        "handle_pace": (44.8, 60, 0.05),
        "seconds_a_turn": (1.34, 1, 0.005),
        "power": (70, 1, 0.5),
        "torque": (1.20, 1, 0.005),
        "time_each": (70, 1, 0.5),
        "passes": (2, 1, 0),
        "path_length": (130, 1e3, 0.5),
        "in_plane_peak": (68, 1, 0.5),
        "lift": (0, 1, 0.5),
        "cutting_stiffness": (1.045, 1e-6, 0.005),
    },
    "face-finish": {
        "table_feed": (90, 60e3, 0.5),
        "handle_pace": (36, 60, 0.5),
        "seconds_a_turn": (1.67, 1, 0.006),
        "power": (15, 1, 0.5),
        "torque": (0.25, 1, 0.005),
        "time_each": (87, 1, 0.5),
    },
    "spot": {
        "spindle_speed": (900, 60, 0.5),
        "cutting_speed": (18, 60, 0.5),
        "effective_diameter": (6.4, 1e3, 0.005),
        "power": (171, 1, 0.5),
        "torque": (1.81, 1, 0.005),
        "thrust": (0.95, 1e-3, 0.005),
        "lever_push": (75, 1, 0.5),
        "time_each": (8, 1, 0.5),
    },
    "drill": {
        "cutting_speed": (14, 60, 0.5),
        "power": (159, 1, 0.5),
        "torque": (1.69, 1, 0.005),
        "thrust": (0.99, 1e-3, 0.005),
        "lever_push": (79, 1, 0.5),
        "drill_strength": (3.7, 1, 0.05),
        "drill_strength_share": (46, 100, 0.5),
        "time_each": (12 + 3, 1, 0.5),
        "strokes": (2, 1, 0),
        "hole_depth": (11.5, 1e3, 1e-6),
    },
    "tap": {
        "torque": (1.92, 1, 0.005),
        "wrench_easy": (5.4, 1, 0.05),
        "tap_strength": (8.5, 1, 0.05),
        "percent_thread": (77, 100, 0.5),
    },
}
#: Share of the spindle's continuous torque, in per cent, as printed.
SHARES = {"face-rough": 16, "face-finish": 3, "spot": 38, "drill": 36}


@pytest.fixture
def outcomes(hm100):
    return Reckoner().reckon(hm100).operations


@pytest.mark.parametrize(("key", "name"), [(key, name) for key, names in PRINTED.items() for name in names])
def test_figure(outcomes, key, name):
    printed, factor, tolerance = PRINTED[key][name]
    value = outcomes[key].figures.value(name)
    assert value is not None
    assert value * factor == pytest.approx(printed, abs=tolerance + 1e-9)


@pytest.mark.parametrize("key", sorted(SHARES))
def test_share_of_the_spindle(outcomes, key):
    torque = next(limit for limit in outcomes[key].limits if limit.name == "spindle-torque")
    assert torque.share * 100 == pytest.approx(SHARES[key], abs=0.5)


def test_the_second_pass_of_the_rough_face_asks_11_per_cent(hm100):
    from jobsheet.edit.commands import SetField

    narrow = SetField("face-rough", "width", "20").apply(hm100)
    narrow = SetField("job:stock", "width", "20").apply(narrow)
    outcome = Reckoner().reckon(narrow).operations["face-rough"]
    assert outcome.figures.value("power") == pytest.approx(48, abs=0.5)
    assert next(one for one in outcome.limits if one.name == "spindle-torque").share == pytest.approx(
        0.11, abs=0.005
    )


def test_every_step_is_expected_and_nothing_cannot_be_reckoned(outcomes):
    for outcome in outcomes.values():
        assert not outcome.problem
        assert all(limit.verdict == "expected" or limit.name == "chatter" for limit in outcome.limits)


def test_the_thin_chip_carries_its_caveat(outcomes):
    """Section "Models": cuts with a mean chip below 0.05 mm lie outside the
    source's range and carry that flag.
    """
    assert any(
        "outside the range of the source" in caveat for caveat in outcomes["face-rough"].figures.caveats
    )


def test_story_8_the_same_plate_on_b2(samples):
    """Facing takes 31 % of 3.82 N·m at 560 rpm; the tap becomes possible under power at 1.92 N·m."""
    outcomes = Reckoner().reckon(read_job(samples / "hm-100-drilled-plate-b2.yaml")).operations
    torque = next(one for one in outcomes["face-rough"].limits if one.name == "spindle-torque")
    assert torque.capacity == pytest.approx(3.82, abs=0.005)
    assert torque.share == pytest.approx(0.31, abs=0.005)
    tap = outcomes["tap"]
    assert tap.figures.value("torque") == pytest.approx(1.92, abs=0.005)
    assert tap.governing.verdict == "expected"


@pytest.mark.parametrize(
    ("owner", "name", "text", "limit", "verdict"),
    [
        (
            "face-rough",
            "spindle",
            "900 rpm",
            "hand-pace",
            "tight",
        ),  # 72 turns a minute, planted mistake: 39 % (section C1)
        ("face-rough", "spindle", "700 rpm", "speed-range", "beyond"),
        (
            "face-rough",
            "feed_per_tooth",
            "0.005",
            "hand-pace",
            "beyond",
        ),  # 4.5 turns a minute, under the 5 of the middle
        ("drill", "feed", "0.30", "quill-push", "beyond"),
        ("drill", "feed", "0.20", "quill-push", "tight"),
    ],
)
def test_verdicts_follow_an_edit(hm100, owner, name, text, limit, verdict):
    from jobsheet.edit.commands import SetField

    outcome = Reckoner().reckon(SetField(owner, name, text).apply(hm100)).operations[owner]
    assert next(one for one in outcome.limits if one.name == limit).verdict == verdict


def test_a_10_mm_drill_is_beyond_the_hand_on_b1(hm100):
    """Section 9: 10 mm, 0.13, B-1 at 320: 8.68 N·m, 2.76 kN, over 2.55: beyond for the hand."""
    from jobsheet.edit.commands import SetField

    job = hm100
    for name, text in (("cutter", "drill 10"), ("feed", "0.13"), ("spindle", "320 rpm")):
        job = SetField("drill", name, text).apply(job)
    outcome = Reckoner().reckon(job).operations["drill"]
    assert outcome.figures.value("torque") == pytest.approx(8.68, abs=0.005)
    assert outcome.figures.value("thrust") == pytest.approx(2760, abs=5)
    assert outcome.governing.name == "quill-push"
    assert outcome.governing.verdict == "beyond"
    assert outcome.figures.value("feed_at_easy_push") * 1e3 == pytest.approx(0.030, abs=0.0005)


def test_a_pilot_is_found_at_the_same_places(hm100):
    """Section 9: 12 after 4, 0.14, Kd 20 000: 9.91 N·m, 1.24 kN."""
    from jobsheet.edit.commands import SetField
    from jobsheet.edit.several_steps import DuplicateSteps

    job = DuplicateSteps(("drill",)).apply(hm100)
    job = SetField("drill", "cutter", "drill 4").apply(job)
    for name, text in (("cutter", "drill 12"), ("feed", "0.14"), ("spindle", "320 rpm")):
        job = SetField("drill-1", name, text).apply(job)
    figures = Reckoner().reckon(job).operations["drill-1"].figures
    assert figures.value("pilot") == pytest.approx(4e-3)
    assert figures.value("torque") == pytest.approx(9.91, abs=0.005)
    assert figures.value("thrust") == pytest.approx(1240, abs=5)


def test_metal_to_remove_by_milling(outcomes):
    """2.0 cm³: 80 × 50 × 0.5."""
    volume = sum(outcomes[key].figures.value("volume") for key in ("face-rough", "face-finish"))
    assert volume * 1e6 == pytest.approx(2.0, abs=0.05)


def test_half_of_the_tip_is_two_whole_turns(hm100):
    """Op 40: the 10 mm tip, move in 5.00 = 2 turns + 0.00 on each handle; 900 rpm."""
    from jobsheet.machine.handles import dial_text, reading
    from jobsheet.storage.card_files import find_card

    for axis in ("x", "y"):
        handle = find_card(hm100.machine).handle(axis)
        assert dial_text(handle, reading(handle, 10e-3 / 2)) == "2 + 0.00"
    (find,) = (one for _, one in hm100.operations() if one.number == 40)
    assert find.fields.spindle.value * 60 == pytest.approx(900)
    assert "10 mm tip" in find.fields.cutter.text


@pytest.mark.parametrize("key", ["spot", "drill", "tap"])
def test_position_table(hm100, key):
    """Every cell: hole, X and Y as turns + dial and line, all with error 0; arriving from the low side."""
    from jobsheet.reckoning.answers.readings import readings_of
    from jobsheet.storage.card_files import find_card

    x14, x66 = ("14", "5 + 1.50", 75), ("66", "26 + 1.00", 50)
    y12, y38 = ("12", "4 + 2.00", 100), ("38", "15 + 0.50", 25)
    set_up, _ = hm100.find(key)
    found = readings_of(set_up, Reckoner().reckon(hm100), find_card(hm100.machine))
    places = next(one for one in found if one.key == key).places
    cells = [tuple((one.drawing, one.dial, one.reading.line) for one in (at.x, at.y)) for at in places]
    assert cells == [(x14, y12), (x66, y12), (x66, y38), (x14, y38)]
    for at in places:
        assert at.x.error == pytest.approx(0, abs=1e-12)
        assert at.y.error == pytest.approx(0, abs=1e-12)


def test_the_facing_asks_far_less_of_the_frame_than_the_test_cut(outcomes):
    """Op 20 asks 1.05 N/µm by the direction of the force, well under the
    7.55 / 1.32 at which section 3 rang.
    """
    asked = outcomes["face-rough"].figures.value("cutting_stiffness") / 1e6
    assert asked == pytest.approx(1.045, abs=0.005)
    assert asked < 7.55 / 1.32 / 5


def test_drill_5_5_would_give_38_per_cent(hm100):
    """Planted: drill 5.5 typed for 5.0; thread (6 − 5.5) × 76.98 = 38 %, drill 5.0 gives 77 %."""
    from jobsheet.edit.commands import SetField

    found = Reckoner().reckon(SetField("drill", "cutter", "drill 5.5").apply(hm100)).operations["tap"]
    assert found.figures.value("percent_thread") * 100 == pytest.approx(38, abs=0.5)
