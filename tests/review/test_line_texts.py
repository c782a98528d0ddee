"""The line of a tool with one part of it changed: it reads as that tool, and the rest stands."""

from __future__ import annotations

import pytest

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.review.mending import line_texts


def test_a_stick_out_is_the_one_that_is_wanted_and_nothing_else_is_another():
    line = "end mill 12 mm, 4 teeth, 60 mm out, drawer 1 no. 2"
    changed = read_cutter(line_texts.with_stick_out(line, "30"), "mm")
    before = read_cutter(line, "mm")
    assert changed.stick_out == pytest.approx(30e-3)
    assert (changed.diameter, changed.teeth, changed.place) == (before.diameter, before.teeth, before.place)


def test_another_diameter_is_another_tool_without_its_place():
    cutter = read_cutter("drill 5 mm, drawer 3 no. 5", "mm")
    changed = read_cutter(line_texts.with_diameter(cutter, "6 mm"), "mm")
    assert changed.diameter == pytest.approx(6e-3)
    assert changed.place == ""


@pytest.mark.parametrize(
    ("change", "before", "after"),
    [
        (line_texts.in_a_collet, "drill 5 mm, in a drill chuck", "drill 5 mm, in a collet"), (line_texts.with_spiral_flute, "taps M6, Spiral point", "taps M6, spiral flute"),
        (line_texts.in_high_speed_steel, "end mill 12 mm, solid carbide", "end mill 12 mm, HSS"), (line_texts.without_angle, "drill 5 mm, 118°, drawer 3", "drill 5 mm, drawer 3"),
        (line_texts.with_micrometer, "square 0.03; gauge vernier; finish 1.6", "square 0.03; gauge micrometer; finish 1.6"),
    ],
)  # fmt: skip
def test_one_part_is_changed(change, before, after):
    assert change(before) == after
    assert change(after) == after
