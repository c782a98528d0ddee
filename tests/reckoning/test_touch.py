"""Where a depth dial counts from: each cutter is touched once, and its readings run on from there."""

from __future__ import annotations

import pytest

from jobsheet.reckoning.touch import Touch, in_spindle
from tests.reckoning.steps import step

ROUGH = step("face", cutter="face mill 50 mm, 4 teeth", depth="0.5", width="30", feed_per_tooth="0.05")
DRILL = step("drill", cutter="drill 5 mm", at="10, 10", depth="12", feed="0.08")
BENCH = step("bench-step", does="measure")


def test_a_second_pass_with_the_same_cutter_goes_on_from_the_first():
    touch = Touch().at(ROUGH).after(ROUGH)
    assert touch.wound == pytest.approx(0.5e-3)
    assert touch.at(ROUGH) is touch
    assert touch.at(ROUGH).after(ROUGH).wound == pytest.approx(1.0e-3)


def test_whatever_else_goes_into_the_spindle_is_touched_anew_and_so_is_what_comes_back():
    touch = Touch().at(ROUGH).after(ROUGH)
    drilled = touch.at(DRILL)
    assert (drilled.cutter, drilled.wound) == ("drill 5 mm", 0.0)
    assert drilled.after(DRILL).at(ROUGH).wound == 0.0


def test_a_step_by_hand_leaves_the_cutter_where_it_is():
    touch = Touch().at(ROUGH).after(ROUGH)
    assert touch.at(BENCH) is touch
    assert touch.after(BENCH) is touch
    assert in_spindle(BENCH) == ""
    assert in_spindle(DRILL) == "drill 5 mm"
