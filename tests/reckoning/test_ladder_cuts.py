"""The cuts a ladder chooses from: round sizes that still grow, drills that exist, threads in their drills."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.reckoning.ladder.ladder_cuts import drills, milling_texts, most, settled, size_text, taps
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
    assert all(round(one.size * 1e6) % 500 == 0 for one in found)


def test_threads_of_a_system_stand_in_drills_smaller_than_they_are():
    for units, begins in (("mm", "M"), ("in", ("#", "1", "3", "5", "7", "9"))):
        found = taps(
            read_cutter("tap M10" if units == "mm" else "tap 3/8-16 UNC", units),
            around(units=units),
            {},
        )
        assert found
        assert all(one.name.startswith(begins) for one in found)


def typed_by(choice):
    return dict(choice.texts)


def test_the_smallest_drill_is_a_millimetre_and_the_largest_the_one_that_was_written():
    """By half millimetres, as a box has them: neither 1.95 nor 2.05, which lie beside one."""
    found = drills(read_cutter("drill 3 mm", "mm"), around(), {})
    assert [one.name for one in found] == ["1 mm", "1.5 mm", "2 mm", "2.5 mm", "3 mm"]
    assert [typed_by(one)["depth"] for one in found] == [
        "2 mm",
        "3 mm",
        "4 mm",
        "5 mm",
        "6 mm",
    ]  # two diameters


def test_depths_of_inch_drills_are_such_as_a_stop_can_be_set_to():
    """Two diameters to the next 0.02 in: 1/16 is 0.125, 6.25 steps; 3/16 is 0.375, 18.75 steps; 7/16 is 0.875, 43.75 steps."""
    found = {
        one.name.removesuffix(" in"): typed_by(one)["depth"]
        for one in drills(read_cutter("drill 1/2 in", "in"), around(units="in"), {})
    }
    assert (found["1/16"], found["3/16"], found["7/16"]) == ("0.12 in", "0.38 in", "0.88 in")


def test_of_the_line_everything_but_size_and_drawer_is_kept():
    for line, made in (
        ("drill 2 mm, cobalt, in a drill chuck, drawer 3", "drill 1 mm, cobalt, in a drill chuck"),
        ("drill 2 mm, drawer 3", "drill 1 mm"),
    ):
        assert typed_by(drills(read_cutter(line, "mm"), around(), {})[0])["cutter"] == made


def test_what_was_typed_stands():
    (first, *_) = drills(read_cutter("drill 2 mm", "mm"), around(), {"feed": "0.01 mm", "spindle": "900 rpm"})
    assert (typed_by(first)["feed"], typed_by(first)["spindle"]) == ("0.01 mm", "900 rpm")


@pytest.mark.parametrize(
    ("value", "last", "size"),
    [
        # 0.5 is 0.8 of 0.625, the least that a rounder size is worth (common practice, as the module says).
        (0.624, 0.0, 0.5), (0.626, 0.0, 0.6),
        # 1.0 grows by 1.087 on 0.92 and by 1.075 on 0.93; then it is the next finer step: 1.2 of 1.24.
        (1.24, 0.92, 1.0), (1.24, 0.93, 1.2),
        # Nothing grows by 1.08 on 1.2: the finest step, 0.05.
        (1.24, 1.2, 1.2),
    ],
)  # fmt: skip
def test_a_rounder_size_gives_away_a_fifth_at_most_and_still_grows(value, last, size):
    assert settled(value * 1e-3, "mm", last * 1e-3) * 1e3 == pytest.approx(size)


def test_the_finest_step_where_it_is_asked_for():
    assert settled(1.29e-3, "mm", finest=True) * 1e3 == pytest.approx(1.25)
    assert settled(0.0129 * 25.4e-3, "in", finest=True) / 25.4e-3 == pytest.approx(0.012)


def test_a_milling_cut_without_what_grows():
    """Of 12 mm: half is 6 mm, six tenths are 7.2 mm."""
    cutter = read_cutter("end mill 12 mm, 4 teeth", "mm")
    face = milling_texts("face", "width", cutter, around(), {})
    assert (face["depth"], face["width"], face["along"]) == ("0.5 mm", "7.2 mm", "x")
    assert "width" not in milling_texts("face", "depth", cutter, around(), {})
    side = milling_texts("side", "depth", cutter, around(), {})
    assert (side["side"], side["width"], side["depth"], side["way"], side["length"]) == ("front", "6 mm", "6 mm", "conventional", "80 mm")  # fmt: skip
    slot = milling_texts("slot", "depth", cutter, around(), {})
    assert (slot["ends"], slot["depth"]) == ("10 mm, 25 mm; 70 mm, 25 mm", "6 mm")
    assert "width" not in slot


def test_a_table_feed_that_was_typed_needs_no_feed_per_tooth():
    cutter = read_cutter("end mill 12 mm, 4 teeth", "mm")
    assert "feed_per_tooth" in milling_texts("side", "depth", cutter, around(), {})
    typed = milling_texts("side", "depth", cutter, around(), {"feed": "60 mm/min", "width": "2 mm"})
    assert "feed_per_tooth" not in typed
    assert (typed["feed"], typed["width"]) == ("60 mm/min", "2 mm")


def test_a_tap_stands_in_its_usual_drill_first():
    """M6 in 5 mm (ISO 261 and its pitch of 1 mm: 6 − 1); nothing above the thread that was written."""
    found = taps(read_cutter("tap M6, bottoming", "mm"), around(), {})
    of_m6 = [one for one in found if one.name.startswith("M6 ")]
    assert of_m6[0].name == "M6 in 5 mm"
    assert of_m6[0].size == pytest.approx(5e-3)
    assert typed_by(of_m6[0])["cutter"] == "tap M6, bottoming"
    assert [one.size for one in of_m6] == sorted(one.size for one in of_m6)
    assert not any(one.name.startswith(("M8 ", "M10 ")) for one in found)
    # 60 % of the height of a thread of 1 mm pitch: 6 − 0.6 × 1.299 = 5.22 mm (ISO 68-1: 2 × 0.6495 of the pitch).
    assert of_m6[-1].size <= 5.23e-3
    plain = taps(read_cutter("tap M6", "mm"), around(), {})
    assert typed_by(plain[0])["cutter"].endswith(", plug")
