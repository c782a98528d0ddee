"""The quick sketch of stock that is no box."""

from __future__ import annotations

import math

import pytest

from jobsheet.gui.strip.sketch import cut, sketch
from jobsheet.gui.strip.sketch_values import Block, seen
from jobsheet.model.shape import Slab
from jobsheet.model.stock import circle

BAR = Block(0.09, 0.04, 0.04, section=(circle(0.02),), along=0)


def test_a_bar_lies_with_its_round_end_to_the_right():
    end = next(stroke for stroke in sketch(BAR, BAR).strokes if len(stroke.points) == len(BAR.section[0]))
    middle = seen(0.09, 0.02, 0.02)
    assert sum(x for x, _ in end.points) / len(end.points) == pytest.approx(middle[0])
    assert not any(stroke.line == "heavy" for stroke in sketch(BAR, BAR).strokes)


def test_a_layer_off_a_bar_leaves_a_flat_as_wide_as_its_chord():
    flat = next(stroke for stroke in sketch(BAR, cut(BAR, [Slab(0.006)])).strokes if stroke.hatched)
    (x0, y0), (x1, y1) = flat.points[:2]
    # Across the work lies along (cos 30°, -sin 30°) of the picture; the chord 6
    # below the top of a circle of 40.
    assert math.hypot(x1 - x0, y1 - y0) == pytest.approx(2 * math.sqrt(0.02**2 - 0.014**2), abs=3e-5)


def test_a_standing_bar_keeps_its_section():
    standing = Block(0.04, 0.04, 0.09, section=(circle(0.02),), along=2)
    lower = cut(standing, [Slab(0.006)])
    assert lower.section == standing.section
    assert lower.height == pytest.approx(0.084)
