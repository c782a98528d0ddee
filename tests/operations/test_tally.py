"""Figures and beside each its formula: shown in one order, bands as factors, every caveat once."""

from __future__ import annotations

import math

import pytest

from jobsheet.cutting.speed import spindle_speed
from jobsheet.operations.names import FIGURES
from jobsheet.operations.shared.tally import Tally


def test_figures_stand_in_the_order_in_which_they_are_read():
    tally = Tally("mm")
    tally.show("cutting_speed", 0.5)
    tally.show("spindle_speed", 10.0)
    order = list(FIGURES)
    names = [one.name for one in tally.done().items]
    assert names == sorted(names, key=order.index)


def test_a_band_is_factors_on_the_value():
    tally = Tally("mm")
    tally.show("torque", 8.0, (0.75, 1.35))
    found = tally.done().get("torque")
    assert (found.low, found.high) == pytest.approx((6.0, 10.8))


def test_a_formula_leaves_its_working():
    tally = Tally("mm")
    got = tally.figure("spindle_speed", spindle_speed, cutting_speed=0.5, diameter=0.02)
    assert got == pytest.approx(0.5 / (math.pi * 0.02))
    (step,) = tally.done().working
    assert (step.figure, step.result, dict(step.inputs)) == (
        "spindle_speed",
        got,
        {"cutting_speed": 0.5, "diameter": 0.02},
    )


def test_a_sentence_is_said_once_and_words_stand_in_place_of_a_number():
    tally = Tally("mm")
    tally.caveat("Clear the chips.")
    tally.caveat("Clear the chips.")
    tally.show("torque", 8.0)
    tally.in_words("torque", "much")
    done = tally.done()
    assert done.caveats == ("Clear the chips.",)
    assert (done.shown("torque"), done.value("torque")) == ("much", 8.0)


def test_figures_of_a_part_come_over_under_another_name():
    part, whole = Tally("mm"), Tally("mm")
    part.show("torque", 8.0)
    part.show("power", 200.0)
    part.caveat("Clear the chips.")
    whole.take(part.done(), {}, ("torque",))
    assert [one.name for one in whole.done().items] == ["torque"]
    assert whole.done().caveats == ("Clear the chips.",)
