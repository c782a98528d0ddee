"""What one turn of a hole's tool takes: a hole before it opens, relieves the chisel, or is none."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.cutting.drill_point import SPLIT_POINT, STANDARD_POINT
from jobsheet.operations.shared.bite import bite_of, feed_at_thrust, wear_of
from tests.limits.one_cut import around

DRILL = read_cutter("drill 10 mm", "mm")


@pytest.mark.parametrize(
    ("hole", "pilot", "relief"),
    [
        (None, None, None),
        (1e-3, None, 1e-3),
        (1.8e-3, 1.8e-3, None),
        (5e-3, 5e-3, None),
        (10e-3, None, None),
        (0.0, None, None),
    ],
)
def test_a_hole_as_wide_as_the_chisel_is_a_pilot(hole, pilot, relief):
    """The chisel of a standard point is 0.18 of 10 mm."""
    bite = bite_of(DRILL, 10e-3, 0.1e-3, hole)
    assert (bite.pilot, bite.relief, bite.chisel) == (pilot, relief, STANDARD_POINT)


def test_a_split_point_has_next_to_no_chisel():
    assert bite_of(read_cutter("drill 10 mm, split point", "mm"), 10e-3, 0.1e-3, None).chisel == SPLIT_POINT


def test_the_same_push_feeds_more_the_wider_the_hole_before_it():
    feeds = [
        feed_at_thrust(around(), bite_of(DRILL, 10e-3, 0.1e-3, hole), 800.0)
        for hole in (None, 1e-3, 3e-3, 6e-3)
    ]
    assert feeds == sorted(feeds)
    assert feeds[0] < feeds[1]


def test_half_a_relieved_chisel_lies_half_way():
    solid, half, whole = (
        feed_at_thrust(around(), bite_of(DRILL, 10e-3, 0.1e-3, hole), 800.0)
        for hole in (None, 0.9e-3, 1.8e-3)
    )
    assert half == pytest.approx((solid + whole) / 2, rel=1e-6)


def test_a_dull_drill_wears_more_than_a_sharp_one():
    sharp, dull = (
        bite_of(read_cutter(f"drill 10 mm, {state}", "mm"), 10e-3, 0.1e-3, None)
        for state in ("sharp", "dull")
    )
    assert wear_of(around(), sharp) < wear_of(around(), dull)


def test_edges_of_a_tool_that_nobody_named_are_worn_as_the_workshops_drills():
    setting = around()
    bite = bite_of(read_cutter("drill 8 mm", "mm"), 8e-3, 1e-4, None)
    assert wear_of(setting, replace(bite, cutter=None)) == setting.shop.wear_drilling
