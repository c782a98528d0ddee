"""Holding, crank, cutter, walls, frame and room: the scenario's and the reference's
own numbers, and each limit's edges.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.limits.each import chatter, table_push
from jobsheet.limits.register import FITS, LIMITS, governing
from jobsheet.model.figure import Figure, Figures
from jobsheet.model.setting import Setting
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job


def limits(job, key):
    return {one.name: one for one in Reckoner().reckon(job).operations[key].limits}


def edited(job, *edits):
    for owner, name, text in edits:
        job = SetField(owner, name, text).apply(job)
    return job


def figures(**values):
    return Figures(tuple(Figure(name, value, "", "") for name, value in values.items()))


@pytest.mark.parametrize(
    ("sample", "key", "wanted", "grip"),
    [
        ("hm-100-drilled-plate-b1.yaml", "face-rough", 170, 1.81),  # section 3b, Holding
        ("hm-101-setting-block.yaml", "face-1-rough", 416, 1.81),  # section 4
        ("hm-102-slide-plate.yaml", "end-b", 705, 3.96),  # section 5, mu 0.10
    ],
)
def test_holding_of_the_scenario(samples, sample, key, wanted, grip):
    one = limits(read_job(samples / sample), key)["holding"]
    # Printed from forces rounded to a newton and a lift that the reference gives within half a per cent.
    assert one.demand == pytest.approx(wanted, abs=2.5)
    assert one.capacity / 1e3 == pytest.approx(grip, abs=0.006)
    assert one.sentence == "grip enough"
    assert one.verdict == "expected"


def test_straps_of_the_scenario(hm100):
    """Section 7: M12, 40 N·m gives 16.7 kN a bolt, half to the work; four straps hold 8.0 kN (mu 0.12)."""
    job = edited(
        hm100, ("holding:set-up-1", "kind", "straps"), ("holding:set-up-1", "clamps", "4"),
        ("holding:set-up-1", "bolt", "M12"), ("holding:set-up-1", "tighten", "40 N·m"),
    )  # fmt: skip
    assert limits(job, "face-rough")["holding"].capacity / 1e3 == pytest.approx(8.0, abs=0.05)


@pytest.mark.parametrize(
    ("torque", "verdict", "words"),
    [("20 N·m", "expected", "enough"), ("3 N·m", "tight", "doubtful"), ("1.5 N·m", "beyond", "not enough")],
)
def test_grip_in_words(hm100, torque, verdict, words):
    """cutting-data section 1.14: by a factor (design, Verdicts): enough to
    0.6 of what holds, doubtful to 1.
    """
    one = limits(edited(hm100, ("holding:set-up-1", "tighten", torque)), "face-rough")["holding"]
    assert one.verdict == verdict
    assert words in one.sentence


def test_work_that_stands_high_wants_four_times(hm100):
    one = limits(edited(hm100, ("holding:set-up-1", "above_jaws", "30")), "face-rough")["holding"]
    assert one.demand == pytest.approx(170 * 4 / 2.5, abs=2)


def test_nothing_is_said_where_the_holding_is_not_known(hm100):
    assert "holding" not in limits(edited(hm100, ("holding:set-up-1", "kind", "other words")), "face-rough")


@pytest.mark.parametrize(
    ("machine", "force", "drag", "expected"),
    [("bench-mill-b-1", 600, 300, 21.7), ("knee-mill-k-2", 1000, 500, 40.8)],
)
def test_crank_of_the_reference(machine, force, drag, expected):
    """cutting-data section 1.15, both examples."""
    from jobsheet.catalog.metals.materials import find

    card = find_card(machine)
    assert card.drag.value == drag
    one = table_push.limit(
        figures(feed_force=float(force)), Setting(machine=card, material=find("S235")), None
    )
    assert one.demand == pytest.approx(expected, abs=0.05)
    assert one.verdict == "expected"


@pytest.mark.parametrize(("force", "verdict"), [(1500.0, "expected"), (1600.0, "tight"), (3500.0, "beyond")])
def test_stiff_over_45_and_stuck_over_90_newtons(force, verdict):
    from jobsheet.catalog.metals.materials import find

    setting = Setting(machine=find_card("bench-mill-b-1"), material=find("S235"))
    assert table_push.limit(figures(feed_force=force), setting, None).verdict == verdict


@pytest.mark.parametrize(("diameter", "out", "scale"), [(12, 50, 0.45), (20, 40, 1.31), (10, 30, 0.73)])
def test_other_cutters_support_more_or_less(diameter, out, scale):
    """cutting-data section 1.9, other cutters on a bench frame of 5 N/µm: 12 mm at 50 out
    0.45; 20 at 40 1.31; 10 at 30 0.73.
    """
    from jobsheet.catalog.metals.materials import find
    from jobsheet.cutting.deflection import HSS_MODULUS, cutter_stiffness, equivalent_diameter

    stiffness = cutter_stiffness(
        modulus=HSS_MODULUS, diameter=equivalent_diameter(diameter=diameter * 1e-3), length=out * 1e-3
    )
    setting = Setting(machine=find_card("bench-mill-b-1"), material=find("S235"))
    one = chatter.limit(figures(cutting_stiffness=1e6, cutter_stiffness=stiffness), setting, None)
    assert one.capacity / 6e6 == pytest.approx(scale, abs=0.006)


def test_chatter_is_by_the_class_until_tried(hm100):
    """5 mm deep is 2.1 times what half of its class carries: some do. 10 mm is 4.3 times: hardly one does."""
    deep = edited(hm100, ("face-rough", "depth", "5"))
    outcome = Reckoner().reckon(deep).operations["face-rough"]
    one = next(limit for limit in outcome.limits if limit.name == "chatter")
    assert one.verdict == "not tried"
    assert one.share > 1
    assert "not tried on this machine: begin at 0.5 mm deep" in one.sentence
    assert one.chance == pytest.approx(0.85, abs=0.03)
    deeper = Reckoner().reckon(edited(hm100, ("face-rough", "depth", "10"))).operations["face-rough"]
    one = next(limit for limit in deeper.limits if limit.name == "chatter")
    assert (one.verdict, one.from_class) == ("beyond", True)
    assert one.sentence.startswith("deeper than this kind of machine carries")


def test_a_marked_speed_holds(hm100):
    job = edited(hm100, ("face-rough", "cutter", "face mill 50 mm, 4 teeth, carbide, marked 500 rpm"))
    assert limits(job, "face-rough")["marked-speed"].verdict == "beyond"


def test_a_drill_chuck_is_not_for_milling_and_lets_go_of_a_large_tap(samples, hm100):
    job = edited(hm100, ("face-rough", "cutter", "end mill 40 mm, 4 teeth, in a drill chuck"))
    assert limits(job, "face-rough")["holder-grip"].verdict == "beyond"
    b2 = read_job(samples / "hm-100-drilled-plate-b2.yaml")
    assert "holder-grip" not in limits(b2, "tap")
    in_chuck = edited(b2, ("tap", "cutter", "taps M6, plug, in a drill chuck"))
    assert limits(in_chuck, "tap")["holder-grip"].verdict == "expected"
    large = edited(in_chuck, ("tap", "thread", "M10"), ("tap", "hole", "8.5"))
    assert limits(large, "tap")["holder-grip"].verdict == "beyond"


@pytest.mark.parametrize(
    ("machine", "there"), [("bench-mill-b-1", True), ("bench-mill-b-2", False), ("knee-mill-k-2", True)]
)
def test_power_tapping_by_the_card(hm100, machine, there):
    """Section 2: B-1 by hand only; B-2 under power; K-2 by hand or with a tapping head that slips."""
    job = edited(hm100, ("job", "machine", machine), ("tap", "method", "under power"), ("tap", "spindle", ""))
    found = limits(job, "tap")
    assert ("reverse" in found) is there
    if machine == "knee-mill-k-2":
        headed = edited(job, ("tap", "cutter", "taps M6, plug, in a tapping head"))
        assert "reverse" not in limits(headed, "tap")


def test_reach_of_the_cutter(samples):
    job = read_job(samples / "hm-102-slide-plate.yaml")
    assert limits(job, "slot")["flute-length"].verdict == "expected"
    short = edited(job, ("slot", "cutter", "slot drill 9, 30 mm out, flutes 8 mm"))
    assert limits(short, "slot")["flute-length"].verdict == "beyond"


def test_wall_against_half_of_the_tolerance(samples):
    """HM-102 op 120: the wall gives way by 3 µm, 100 ±0.1 allows 100."""
    one = limits(read_job(samples / "hm-102-slide-plate.yaml"), "end-right")["wall-error"]
    assert one.capacity == pytest.approx(100e-6)
    assert one.verdict == "expected"


def test_headroom_and_travel(hm100):
    """B-1: 80-300 mm; vice bed 42, jaws 25, work 6 above: its top stands at 73 mm."""
    job = edited(hm100, ("face-rough", "cutter", "face mill 50 mm, 4 teeth, carbide, 40 mm out"))
    found = limits(job, "face-rough")
    assert found["headroom"].demand == pytest.approx(0.073 + 0.040 + 0.060 + 0.010)
    assert found["headroom"].verdict == "expected"
    tall = edited(job, ("holding:set-up-1", "above_jaws", "150"))
    assert limits(tall, "face-rough")["headroom"].verdict == "beyond"
    assert found["travel"].capacity == pytest.approx(0.3)
    long = edited(hm100, ("job:stock", "length", "400"))
    assert limits(long, "face-rough")["travel"].verdict == "beyond"


def test_too_heavy_for_the_table(hm100):
    heavy = edited(
        hm100, ("job:stock", "length", "300"), ("job:stock", "width", "150"), ("job:stock", "height", "120")
    )
    assert limits(heavy, "face-rough")["table-load"].verdict == "beyond"


def test_what_only_has_to_fit_never_governs_where_it_does(samples):
    for path in samples.glob("*.yaml"):
        for outcome in Reckoner().reckon(read_job(path)).operations.values():
            first = governing(outcome.limits)
            assert first is None or first.name not in FITS or first.verdict != "expected"
            assert [one.name for one in outcome.limits if one.verdict == "not tried"] in ([], ["chatter"])


def test_verdicts_do_not_depend_on_units(samples):
    for path in samples.glob("hm-10*.yaml"):
        job = read_job(path)
        other = "in" if job.units == "mm" else "mm"
        a, b = Reckoner().reckon(job), Reckoner().reckon(edited(job, ("job", "units", other)))
        for key, outcome in a.operations.items():
            assert [(one.name, one.verdict) for one in outcome.limits] == [
                (one.name, one.verdict) for one in b.operations[key].limits
            ]


def test_every_limit_has_a_file_and_says_what_it_shows(samples):
    assert len(LIMITS) == len(set(LIMITS))
    for path in samples.glob("*.yaml"):
        for outcome in Reckoner().reckon(read_job(path)).operations.values():
            for one in outcome.limits:
                assert one.shown
                assert one.title
                assert one.share == pytest.approx(one.demand / one.capacity, rel=1e-9)


def test_a_weaker_machine_never_gives_more(hm100):
    card = find_card("bench-mill-b-1")
    weak = replace(card, spindle=replace(card.spindle, power=replace(card.spindle.power, value=100.0)))
    from jobsheet.limits.each import spindle_power, spindle_torque

    setting = Reckoner().reckon(hm100).settings["face-rough"]
    found = Reckoner().reckon(hm100).operations["face-rough"].figures
    for module in (spindle_torque, spindle_power):
        assert (
            module.limit(found, replace(setting, machine=weak)).capacity
            < module.limit(found, setting).capacity
        )


def test_a_fly_cutter_hammers_and_its_peak_counts(hm100):
    """C10: peak over mean 4.13; a drive that carries the mean may give out at the peak."""
    job = edited(
        hm100, ("face-rough", "cutter", "face mill 50 mm, 1 tooth, carbide"), ("face-rough", "depth", "8")
    )
    outcome = Reckoner().reckon(job).operations["face-rough"]
    assert outcome.figures.gaps
    torque = next(one for one in outcome.limits if one.name == "spindle-torque")
    from jobsheet.limits.verdict import chance_over

    assert torque.chance > chance_over(torque.demand, 13.67, 0.39)
