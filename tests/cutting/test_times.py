"""Times and approaches."""

from __future__ import annotations

from math import radians

import pytest

from jobsheet.cutting import times
from jobsheet.errors import CalcError


def test_each_peck_adds_three_seconds():
    put = {"depth": 20e-3, "diameter": 10e-3, "feed": 0.1e-3, "spindle_speed": 5.0}
    assert times.drilling_time(**put, strokes=3) - times.drilling_time(**put) == pytest.approx(6.0)


def test_a_hole_at_one_millimetre_a_second():
    assert times.drilling_time(depth=6e-3, diameter=10e-3, feed=1e-3, spindle_speed=1.0) == pytest.approx(
        10.0
    )


@pytest.mark.parametrize("strokes", [0, 0.5, -1])
def test_a_hole_takes_one_stroke_at_least(strokes):
    with pytest.raises(CalcError, match="strokes"):
        times.drilling_time(20e-3, 10e-3, 1e-4, 5.0, strokes)


def test_a_point_of_ninety_degrees_is_half_the_diameter():
    assert times.point_length(10, radians(90)) == pytest.approx(5)


def test_half_the_cutter_and_more_touch_with_the_front():
    assert times.side_approach(30, 30) == 15
    assert times.side_approach(20, 30) == 15
    assert times.side_approach(15, 30) == 15
