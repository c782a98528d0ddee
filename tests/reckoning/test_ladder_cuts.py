"""The cuts a ladder chooses from: round sizes that still grow, drills that exist, threads in their drills."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.reckoning.ladder.ladder_cuts import drills, most, settled, size_text, taps
from tests.limits.one_cut import around


@pytest.mark.parametrize(
    ("value", "units", "size"),
    [(1.07, "mm", 1.0), (0.73, "mm", 0.6), (0.47, "mm", 0.4), (2.61, "mm", 2.5), (0.21, "mm", 0.2)],
)
def test_the_roundest_size_that_is_not_much_below(value, units, size):
    assert settled(value * 1e-3, units) * 1e3 == pytest.approx(size)


@given(st.floats(0.2e-3, 10e-3), st.sampled_from(["mm", "in"]))
def test_it_is_never_above_and_seldom_far_below(value, units):
    size = settled(value, units)
    assert size <= value * (1 + 1e-6)
    assert size >= 0.7 * value - 0.05e-3


def test_sizes_as_they_are_typed():
    assert size_text(0.7e-3, "mm") == "0.7 mm"
    assert size_text(0.015 * 25.4e-3, "in") == "0.015 in"


def test_a_width_grows_to_the_cutter_and_a_depth_to_one_and_a_half_of_it():
    cutter = read_cutter("end mill 12 mm, 4 teeth", "mm")
    assert most("side", "width", cutter) == pytest.approx(12e-3)
    assert most("side", "depth", cutter) == pytest.approx(18e-3)
    assert most("face", "depth", cutter) == pytest.approx(6e-3)


def test_drills_go_up_by_half_millimetres_to_the_one_that_was_written():
    found = drills(read_cutter("drill 8 mm", "mm"), around(), {})
    assert found[-1].size == pytest.approx(8e-3)
    assert all(round(one.size * 1e4) % 5 == 0 for one in found)


def test_threads_of_a_system_stand_in_drills_smaller_than_they_are():
    for units, begins in (("mm", "M"), ("in", ("#", "1", "3", "5", "7", "9"))):
        found = taps(
            read_cutter("tap M10" if units == "mm" else "tap 3/8-16 UNC", units),
            around(units=units),
            {},
        )
        assert found
        assert all(one.name.startswith(begins) for one in found)
