"""Verdicts by what test cuts taught: chances at their thresholds, `cut before` and
what takes it away (design, Verdicts).
"""

from __future__ import annotations

import math

import pytest
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.limits.each import chatter, spindle_power, spindle_torque
from jobsheet.limits.evidence import NOISE, chance_over
from jobsheet.machine.spindle import at_speed
from jobsheet.model.capacity import Capacity, Good, Snapshot
from jobsheet.model.figure import Figure, Figures
from jobsheet.model.setting import Setting
from jobsheet.storage.card_files import find_card

#: 90 % of a normal distribution end below so many standard deviations (tables of the normal distribution).
TENTH = 1.2815515655446004


class Fields:
    """As much of an operation as these limits look at."""

    def __init__(self, cutter="end mill 12 mm, 4 teeth, 30 mm out"):
        self.cutter = read_cutter(cutter, "mm")


def figures(**values):
    return Figures(
        items=tuple(Figure(name=name, value=value, unit="", shown="") for name, value in values.items())
    )


def known(limit="chatter", process="side", kind="end mill", median=1.0, **more):
    """A capacity whose whole weight is one value: then the chance is that of a
    cut's own noise, known in closed form.
    """
    asked = {
        "low": median * 0.8, "high": median * 1.25, "median": median, "cells": ((math.log(median), 1.0),), "spoke": 3,
        "newest": "2026-11-12",
    }  # fmt: skip
    return Capacity(limit=limit, process=process, cutter_kind=kind, **{**asked, **more})


def around(*capacities):
    proof = Snapshot(machine="bench-mill-b-1", made="2026-11-25", capacities=capacities, trials=3)
    return Setting(machine=find_card("bench-mill-b-1"), material=find("S235"), proof=proof)


def judged(share, *capacities, process="side", fields=None):
    """Chatter at a share of the 6 N/µm of a bench machine's class."""
    found = chatter.limit(
        figures(cutting_stiffness=share * 6e6), around(*capacities), fields or Fields(), process
    )
    assert found is not None
    return found


def good(**more):
    asked = {
        "share": 1.0, "date": "2026-11-12", "cutter": "end mill 12 mm, 4 teeth, drawer 1 no. 4", "stick_out": 0.030,
        "holding": "80 mm vice",
    }  # fmt: skip
    return Good(**{**asked, **more})


@pytest.mark.parametrize(
    ("sigmas", "verdict"),
    [
        (-TENTH - 1e-3, "expected"),
        (-TENTH + 1e-3, "tight"),
        (-1e-3, "tight"),
        (1e-3, "beyond"),
    ],
)
def test_ten_and_fifty_in_a_hundred_part_the_words(sigmas, verdict):
    found = judged(math.exp(sigmas * NOISE), known())
    assert found.verdict == verdict
    assert found.learned
    peak = at_speed(find_card("bench-mill-b-1"), 560 / 60).peak
    assert peak == pytest.approx(13.7, abs=0.05)  # demo-scenario section 2
    torque = spindle_torque.limit(
        figures(torque=peak * 0.4 * math.exp(sigmas * NOISE), spindle_speed=560 / 60),
        around(known("spindle-torque", median=0.4)),
        Fields(),
        "side",
    )
    assert torque.verdict == verdict
    assert torque.learned


def test_without_trials_chatter_is_by_the_class_and_torque_is_the_cards():
    """3 of 6 N/µm: a chance of 18 % with the class's spread of 0.743."""
    setting = replace(around(), proof=None)
    found = chatter.limit(figures(cutting_stiffness=3e6), setting, Fields(), "side")
    assert (found.verdict, found.learned) == ("not tried", False)
    torque = spindle_torque.limit(figures(torque=2.0, spindle_speed=560 / 60), setting, Fields(), "side")
    assert not torque.learned


def test_a_recorded_good_cut_says_so_with_its_date_and_cutter():
    found = judged(0.98, known(good=(good(),)))
    assert found.verdict == "cut before"
    assert found.sentence == "cut before: 2026-11-12, end mill 12 mm, drawer 1 no. 4"
    assert found.chance > 0.10  # tight, were it not for the record


@pytest.mark.parametrize(
    ("cut", "cutter"),
    [
        (good(share=0.97), None),  # it asked less
        (good(holding=""), None),  # nobody noted how it was held
        (good(overtaken=True), None),  # a later cut ended badly at no more
        (good(), "end mill 12 mm, 4 teeth, 33.1 mm out"),  # over a tenth further out
        (good(), "end mill 12 mm, 4 teeth"),  # nobody knows how far
    ],
)
def test_what_takes_cut_before_away(cut, cutter):
    fields = Fields(cutter) if cutter else None
    assert judged(0.98, known(good=(cut,)), fields=fields).verdict == "tight"


def test_a_tenth_more_stick_out_is_allowed():
    fields = Fields("end mill 12 mm, 4 teeth, 33 mm out")
    assert judged(0.98, known(good=(good(),)), fields=fields).verdict == "cut before"


def test_a_record_of_another_process_is_no_record():
    alone = known(process="", kind="")
    found = judged(0.98, known(good=(good(),)), alone, process="face")
    assert found.verdict == "tight"
    assert found.evidence == ()


def test_more_than_was_carried_names_the_trial_that_gave_out():
    end = good(share=1.26, demand=7.55e6, outcome="chatter")
    found = judged(1.65, known(ends=(end,)))
    assert found.verdict == "beyond"
    assert (
        found.sentence == "it chattered at 7.55 N/µm (2026-11-12, end mill 12 mm, drawer 1 no. 4): less depth"
    )


def test_a_kind_of_cutter_never_tried_is_not_condemned_but_a_light_cut_is_carried():
    """Story 4 (slot drill on B-1: try a lighter cut first) and HM-100's face mill, well under the record."""
    tried, alone = known(), known(process="", kind="")
    slot_drill = Fields("slot drill 9 mm, 30 mm out")
    assert judged(1.3, tried, alone, fields=slot_drill).verdict == "not tried"
    assert judged(0.95, tried, alone, fields=slot_drill).verdict == "not tried"
    assert judged(0.3, tried, alone, fields=slot_drill).verdict == "expected"


def test_trials_lie_under_the_bar_at_what_they_asked():
    found = judged(0.5, known(median=1.25, good=(good(share=1.0),), bad=(1.5,)))
    assert found.evidence == ((pytest.approx(0.8), True), (pytest.approx(1.2), False))
    assert found.share == pytest.approx(0.4)


def test_torque_keeps_its_share_of_the_card_and_power_says_the_same():
    """560 rpm on B-1: 7.60 N·m for long, 13.7 for seconds (demo-scenario section 2)."""
    setting = around(known("spindle-torque", median=0.7, good=(good(share=0.2),)))
    values = figures(torque=1.2, spindle_speed=560 / 60, power=70.4)
    torque = spindle_torque.limit(values, setting, Fields(), "side")
    assert torque.share == pytest.approx(1.2 / 7.60, abs=0.001)
    assert torque.verdict == "cut before"
    assert torque.evidence[0][0] == pytest.approx(0.2 * 13.7 / 7.60, abs=0.001)
    power = spindle_power.limit(values, setting, Fields(), "side")
    assert (power.verdict, power.learned, power.sentence) == (torque.verdict, True, torque.sentence)


def test_above_continuous_a_good_cut_of_seconds_is_still_for_seconds():
    setting = around(known("spindle-torque", median=2.0, good=(good(share=0.9),)))
    found = spindle_torque.limit(figures(torque=9.0, spindle_speed=560 / 60), setting, Fields(), "side")
    assert (found.verdict, found.sentence) == ("tight", "more than it holds for long: short cuts only")


def test_the_chance_of_one_value_is_that_of_a_cuts_own_noise():
    assert chance_over(known(), 1.0) == pytest.approx(0.5)
    assert chance_over(known(), math.exp(NOISE)) == pytest.approx(0.8413, abs=1e-4)  # one standard deviation
    assert chance_over(known(), 0.0) == 0.0
    assert chance_over(known(), math.inf) == 1.0


def test_snapshots_are_equal_by_value_and_hash_alike():
    one, other = (Snapshot(machine="a", made="b", capacities=(known(),), trials=3) for _ in range(2))
    assert one == other
    assert hash(one) == hash(other)
    assert one != replace(other, capacities=(known(median=1.1),))
