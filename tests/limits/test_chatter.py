"""Chatter in all that it says: by the class, by other cutters on this machine, of no class, and by
its own trials (design, Verdicts).

6 N/µm is what half of all bench machines carry, 20 N/µm half of all knee mills, spread
0.743 (cutting-data 1.9: estimate).
"""

from __future__ import annotations

import math
from statistics import NormalDist
from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.limits.each import chatter
from jobsheet.model.capacity import Capacity, Good, Snapshot
from jobsheet.model.figure import Figure, Figures, Step
from jobsheet.model.setting import Setting
from jobsheet.storage.card_files import find_card

BENCH, KNEE = find_card("bench-mill-b-1"), find_card("knee-mill-k-2")
CLASS = 6e6
NORMAL = NormalDist()
END_MILL, SLOT_DRILL = "end mill 12 mm, 4 teeth, 30 mm out", "slot drill 12 mm, 2 teeth"
INCH = 25.4e-3


def figures(demand=None, depth=None, cutter=None):
    values = {"cutting_stiffness": demand, "cutter_stiffness": cutter}
    working = () if depth is None else (Step("cutting_stiffness", "y", (("depth", depth),), demand),)
    return Figures(tuple(Figure(name, value, "", "") for name, value in values.items() if value is not None), working=working)  # fmt: skip


def step(text=END_MILL):
    return SimpleNamespace(cutter=read_cutter(text, "mm"))


def known(median=1.0, **more):
    """All its weight on one value: its chance is that of a cut's own noise, 0.12 (design, Proving)."""
    asked = {
        "limit": "chatter", "process": "side", "cutter_kind": "end mill", "low": median * 0.8, "high": median * 1.25, "spoke": 3,
        "cells": ((math.log(median), 1.0),), "newest": "2026-11-12",
    }  # fmt: skip
    return Capacity(median=median, **{**asked, **more})


def good(**more):
    asked = {"share": 1.0, "date": "2026-11-12", "cutter": "end mill 12 mm, 4 teeth, drawer 1 no. 4", "stick_out": 0.03, "holding": "vice"}  # fmt: skip
    return Good(**{**asked, **more})


def say(
    share, *capacities, depth=None, cutter=END_MILL, process="side", machine=BENCH, units="mm", level=CLASS
):
    proof = Snapshot(machine="m", made="x", capacities=capacities, trials=3) if capacities else None
    setting = Setting(machine=machine, material=find("S235"), proof=proof, units=units)
    return chatter.limit(figures(share * level, depth), setting, step(cutter), process)


def test_nothing_is_said_where_nothing_is_milled_or_the_machine_is_of_no_class():
    assert chatter.limit(figures(), Setting(machine=BENCH, material=find("S235")), step()) is None
    assert say(1.0, machine=replace(BENCH, stiffness_class="")) is None
    assert say(1.0, machine=replace(BENCH, stiffness_class="bridge")) is None


@pytest.mark.parametrize(
    ("machine", "cutter", "capacity"),
    [
        (BENCH, None, 6e6), (KNEE, None, 20e6),
        (BENCH, 9.59e6, 6e6),  # the reference cutter, 12 mm high speed steel 30 mm out
        # In series with a frame of 5 N/µm (cutting-data 1.9): 12 mm 50 mm out, 2.0715 N/µm.
        (BENCH, 2.0715e6, 6e6 * (1 / 5 + 1 / 9.59) / (1 / 5 + 1 / 2.0715)),
        (replace(BENCH, frame=None), 2.0715e6, 6e6),  # nobody knows the frame
    ],
)  # fmt: skip
def test_what_half_of_the_class_carries_with_this_cutter(machine, cutter, capacity):
    found = chatter.limit(figures(1e6, None, cutter), Setting(machine=machine, material=find("S235")), step())
    assert found.capacity == pytest.approx(capacity, rel=1e-4)
    assert found.share == pytest.approx(1e6 / capacity, rel=1e-4)
    ends = [capacity * math.exp(0.743 * NORMAL.inv_cdf(part)) for part in (0.05, 0.95)]
    assert (found.low, found.high) == (pytest.approx(ends[0], rel=1e-4), pytest.approx(ends[1], rel=1e-4))
    assert f"half of all machines of the class carry {capacity / 1e6:.1f} N/µm" in found.working


@pytest.mark.parametrize(
    ("share", "verdict", "sentence", "odds"),
    [
        (0.30, "expected", "", "from class"), (0.385, "expected", "", "from class"),
        # A tenth lies at e^(−1.2816 × 0.743) = 0.386 of the middle: that share of 4 mm
        # is 1.54 mm at one times the middle.
        (0.387, "not tried", "not tried on this machine: begin at 3.9 mm deep", "begin at 3.9 mm"),
        (1.0, "not tried", "not tried on this machine: begin at 1.5 mm deep", "begin at 1.5 mm"),
        (3.38, "not tried", "not tried on this machine: begin at 0.45 mm deep", "begin at 0.45 mm"),
        (3.40, "beyond", "deeper than this kind of machine carries: begin at 0.45 mm deep", "from class"),
    ],
)  # fmt: skip
def test_by_the_class_alone(share, verdict, sentence, odds):
    found = say(share, depth=4e-3)
    assert (found.verdict, found.sentence, found.odds) == (verdict, sentence, odds)
    assert (found.name, found.title, found.unit) == ("chatter", "Chatter", "N/m")
    assert (found.from_class, found.learned, found.evidence) == (True, False, ())
    assert found.begin == sentence.rpartition("begin at ")[2]
    assert found.chance == pytest.approx(NORMAL.cdf(math.log(share) / 0.743), abs=1e-6)


def test_the_width_stands_alone_beside_the_word():
    setting = Setting(machine=BENCH, material=find("S235"))
    made = figures(CLASS, 12e-3)
    wide = replace(made, items=(*made.items, Figure("width_of_cut", 6e-3, "", ""), Figure("feed_per_tooth", 5e-5, "", "")))  # fmt: skip
    found = chatter.limit(wide, setting, step(), "side")
    assert found.begin.endswith(" mm wide")
    assert found.odds == f"begin at {found.begin.removesuffix(' wide')}"
    assert found.sentence == f"not tried on this machine: begin at {found.begin}"


@pytest.mark.parametrize(
    ("depth", "units", "shown"),
    [
        (None, "mm", "3.00 of 6.0 N/µm"), (4e-3, "mm", "4 of 8 mm deep"), (6e-3, "mm", "6 of 12 mm deep"),
        (0.1 * INCH, "in", "0.1 of 0.2 in deep"), (None, "in", "3.00 of 6.0 N/µm"),
    ],
)  # fmt: skip
def test_what_is_asked_is_shown_as_a_depth(depth, units, shown):
    """Half of what half the class carries: it would carry twice the depth."""
    assert say(0.5, depth=depth, units=units).shown == shown


@pytest.mark.parametrize("kind", ["slitting saw", "T-slot cutter", "dovetail cutter", "side and face cutter"])
@pytest.mark.parametrize(
    ("depth", "units", "shown"), [(2e-3, "mm", "2 mm deep"), (0.1 * INCH, "in", "0.1 in deep"), (None, "mm", "12.00 N/µm")]
)  # fmt: skip
def test_of_no_class_it_is_the_lowest_feed_first_and_no_share(kind, depth, units, shown):
    """T-slot, dovetail, saw, side-and-face cutters have no class prior (issue of the verdicts, 3)."""
    fields = SimpleNamespace(cutter=replace(read_cutter(END_MILL, "mm"), kind=kind))
    setting = Setting(machine=BENCH, material=find("S235"), units=units)
    found = chatter.limit(figures(12e6, depth), setting, fields, "slot")
    assert (found.verdict, found.begin, found.odds, found.shown) == ("not tried", "the lowest feed", "lowest feed first", shown)  # fmt: skip
    assert found.sentence == "not tried on this machine: lowest feed first"
    assert (found.share, found.capacity, found.low, found.high, found.chance) == (0.0, 0.0, 0.0, 0.0, None)
    assert (found.from_class, found.learned) == (True, False)
    assert (found.demand, found.unit, found.title) == (12e6, "N/m", "Chatter")
    assert "no class" in found.working


ALONE = {"process": "", "cutter_kind": ""}


@pytest.mark.parametrize(
    ("share", "verdict", "learned"),
    [
        (0.5, "expected", True),  # the machine alone makes it as good as certain
        (0.85, "expected", True),  # Φ(ln 0.85 / 0.12) = Φ(−1.354) = 8.8 %
        (0.87, "not tried", False),  # 12 %
        (1.2, "not tried", False), (3.38, "not tried", False),
        (3.40, "beyond", False),  # hardly one of the class carries it, whatever others did
    ],
)  # fmt: skip
def test_a_cutter_never_tried_is_not_condemned_by_what_others_did(share, verdict, learned):
    found = say(share, known(planned=0.8, **ALONE), cutter=SLOT_DRILL, depth=4e-3)
    assert (found.verdict, found.learned, found.from_class) == (verdict, learned, not learned)
    chance = NORMAL.cdf(math.log(share) / 0.12)
    assert found.chance == pytest.approx(
        min(chance, 0.95) if share < 3.39 else NORMAL.cdf(math.log(share) / 0.743), abs=1e-4
    )
    if verdict == "not tried":  # planned with 0.8 of the class: that share of 4 mm
        assert found.begin == f"{math.floor(40 * 0.8 / share + 1e-9) / 10:g} mm deep"


def test_without_a_share_to_plan_with_it_begins_where_nine_of_ten_of_the_class_do():
    assert say(1.0, known(**ALONE), cutter=SLOT_DRILL, depth=4e-3).begin == "1.5 mm deep"
    planned = known(planned=0.9, **ALONE)
    assert say(1.0, planned, cutter=SLOT_DRILL, depth=4e-3).begin == "3.6 mm deep"
    # A slot is not begun over a quarter of its cutter on a bench machine, whatever the frame bears.
    assert say(1.0, planned, cutter=SLOT_DRILL, depth=4e-3, process="slot").begin == "3 mm deep"


def test_it_never_begins_larger_than_the_cut_itself():
    """A workshop that tries with a chance of three in ten plans up to 0.94; at 0.9
    the chance is 19 %, over one in ten.
    """
    assert say(0.9, known(planned=0.94, **ALONE), cutter=SLOT_DRILL, depth=4e-3).begin == "4 mm deep"


def test_trials_of_the_spindle_say_nothing_of_the_frame():
    found = say(1.0, known(limit="spindle-torque"), known(limit="spindle-torque", **ALONE), depth=4e-3)
    assert (found.verdict, found.learned, found.begin) == ("not tried", False, "1.5 mm deep")


def test_a_kind_that_was_tried_is_judged_in_another_process_by_the_machine_alone():
    found = say(1.2, known(), known(**ALONE), process="face", depth=4e-3)
    assert (found.verdict, found.learned) == ("beyond", True)
    assert found.sentence == "more than this machine is likely to carry quietly: try a lighter cut first"


@pytest.mark.parametrize(
    ("share", "more", "verdict", "sentence"),
    [
        (0.5, {}, "expected", ""),
        (0.95, {}, "tight", "near what rings here: less depth, tool and holder short, slides locked"),
        (1.0, {}, "tight", "near what rings here: less depth, tool and holder short, slides locked"),
        (1.2, {}, "beyond", "more than this machine is likely to carry quietly: try a lighter cut first"),
        (0.95, {"good": (good(),)}, "cut before", "cut before: 2026-11-12, end mill 12 mm, drawer 1 no. 4"),
        (0.5, {"good": (good(),)}, "cut before", "cut before: 2026-11-12, end mill 12 mm, drawer 1 no. 4"),
        # Beyond stays beyond, though it went well once.
        (1.2, {"good": (good(share=1.3),)}, "beyond", "more than this machine is likely to carry quietly: try a lighter cut first"),
        (1.2, {"ends": (good(demand=7.5e6, outcome="slowed"),)}, "beyond", "more than this machine is likely to carry quietly: try a lighter cut first"),
    ],
)  # fmt: skip
def test_by_its_own_trials(share, more, verdict, sentence):
    found = say(share, known(**more), depth=4e-3)
    assert (found.verdict, found.sentence) == (verdict, sentence)
    assert (found.learned, found.from_class, found.begin) == (True, False, "")
    assert (found.name, found.title, found.unit) == ("chatter", "Chatter", "N/m")


@pytest.mark.parametrize(
    ("outcome", "depth", "units", "words"),
    [
        # It gave out at 5.4 N/µm; this cut asks 7.2 at 4 mm, so 3 mm of it asks as much.
        ("chatter", 4e-3, "mm", "it chattered at what 3 mm asks"), ("noisy", 4e-3, "mm", "it was noisy at what 3 mm asks"),
        ("noisy", 0.4 * INCH, "in", "it was noisy at what 0.3 in asks"), ("chatter", None, "mm", "it chattered at 5.40 N/µm"),
    ],
)  # fmt: skip
def test_beyond_names_the_lightest_trial_that_gave_out_as_a_depth_of_this_cut(outcome, depth, units, words):
    ends = (good(share=2.0, demand=12e6, outcome="chatter"), good(share=0.9, demand=5.4e6, outcome=outcome))
    found = say(1.2, known(ends=ends), depth=depth, units=units)
    assert found.sentence == f"{words} (2026-11-12, end mill 12 mm, drawer 1 no. 4): less depth"


@pytest.mark.parametrize(
    ("depth", "units", "shown", "span"),
    [
        # What it carries is 1.5 × 6 = 9 N/µm, 7.2 to 11.25 nine times in ten; 6 N/µm are
        # asked at 4 mm: 6 mm, 4.8 to 7.5 mm.
        (4e-3, "mm", "4 of 6 mm deep", "7.20 to 11.25 N/µm, 4.8 to 7.5 mm deep in this cut, with this cutter"),
        (0.2 * INCH, "in", "0.2 of 0.3 in deep", "7.20 to 11.25 N/µm, 0.24 to 0.375 in deep in this cut, with this cutter"),
        (None, "mm", "6.00 of 9.00 N/µm", "7.20 to 11.25 N/µm with this cutter"),
    ],
)  # fmt: skip
def test_what_trials_say_it_carries(depth, units, shown, span):
    found = say(1.0, known(1.5, good=(good(share=0.6),), bad=(1.8,)), depth=depth, units=units)
    assert found.shown == shown
    assert found.working == f"depth × teeth in cut × Kt; 3 trials say it carries {span}, newest 2026-11-12"
    assert (found.demand, found.capacity, found.share) == (CLASS, pytest.approx(9e6), pytest.approx(1 / 1.5))
    assert (found.low, found.high) == (pytest.approx(7.2e6), pytest.approx(11.25e6))
    assert found.evidence == ((pytest.approx(0.4), True), (pytest.approx(1.2), False))
    assert found.chance == pytest.approx(NORMAL.cdf(-math.log(1.5) / 0.12), abs=1e-4)
    assert found.odds == "under 1 in 100"


def test_odds_say_what_a_frame_does():
    assert say(0.95, known()).odds == "1 in 3 chatters"  # Φ(ln 0.95 / 0.12) = Φ(−0.427) = 0.335
    assert say(1.05, known()).odds == "7 in 10 chatter"  # Φ(0.407) = 0.658


@pytest.mark.parametrize(
    ("share", "median", "place", "verdict"),
    [
        (0.6, 0.5, 2.0, "beyond"),
        (0.49, 0.5, 2.0, "expected"),
        (1.5, 2.0, 4.0, "expected"),
        (2.1, 2.0, 4.0, "beyond"),
    ],
)
def test_more_than_the_middle_is_beyond_however_crooked_the_distribution(share, median, place, verdict):
    """The weight lies far over what is called the middle, so that the chance is
    next to nothing: the share decides.
    """
    found = say(share, known(median, cells=((math.log(place), 1.0),)))
    assert found.chance < 0.01
    assert found.verdict == verdict
