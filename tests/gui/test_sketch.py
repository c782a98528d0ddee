"""A stage of the work as lines: what a step took off is dashed, what it left is
heavy, and sizes are those it made.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.gui.strip.sketch import ROUND, cut, sketch
from jobsheet.gui.strip.sketch_values import Block, seen
from jobsheet.model.shape import Hole, Slab

PLATE = Block(0.08, 0.05, 0.012)
HOLE = Hole(0.01, 0.01, 0.006, None)


def test_a_layer_lowers_the_block_and_a_hole_stays_in_it():
    after = cut(PLATE, (Slab(0.001), HOLE))
    assert after.height == pytest.approx(0.011)
    assert after.holes == (HOLE,)
    assert (after.length, after.width) == (PLATE.length, PLATE.width)
    assert PLATE.holes == ()


def test_work_that_would_be_gone_is_still_to_be_seen():
    assert cut(PLATE, (Slab(1.0),)).height > 0


def test_a_layer_has_its_old_outline_dashed_its_face_hatched_and_its_depth_as_a_size():
    found = sketch(PLATE, cut(PLATE, (Slab(0.002),)))
    assert any(stroke.line == "dashed" for stroke in found.strokes)
    assert [stroke.hatched for stroke in found.strokes if stroke.line == "heavy"] == [True]
    assert [(size.value, size.round) for size in found.sizes] == [(pytest.approx(0.002), False)]


def test_two_holes_of_one_size_are_two_rings_and_one_size():
    other = Hole(0.07, 0.04, 0.006, None)
    found = sketch(PLATE, cut(PLATE, (HOLE, other)))
    rings = [stroke for stroke in found.strokes if stroke.line == "heavy"]
    assert len(rings) == 2
    assert {len(ring.points) for ring in rings} == {ROUND}
    assert [(size.value, size.round) for size in found.sizes] == [(0.006, True)]


def test_of_old_holes_in_one_place_the_widest_is_drawn():
    wide = Hole(HOLE.x, HOLE.y, 0.012, 0.002)
    before = cut(PLATE, (HOLE, wide))
    thin = [stroke for stroke in sketch(before, before).strokes if len(stroke.points) == ROUND]
    assert len(thin) == 1
    lefts = [x for x, _ in thin[0].points]
    assert max(lefts) - min(lefts) > 0.012, "the wider one"


def test_the_stock_alone_has_nothing_heavy_and_no_size():
    found = sketch(PLATE, cut(PLATE, (Slab(0.002), HOLE)), now=False)
    assert {stroke.line for stroke in found.strokes} == {"thin"}
    assert found.sizes == ()


@given(st.floats(0.005, 0.5), st.floats(0.005, 0.5), st.floats(0.001, 0.2), st.floats(0, 0.1))
def test_all_of_it_lies_in_its_box(length, width, height, depth):
    before = Block(length, width, height)
    found = sketch(before, cut(before, (Slab(depth),)))
    left, top, right, bottom = found.box
    for stroke in found.strokes:
        for x, y in stroke.points:
            assert left - 1e-9 <= x <= right + 1e-9
            assert top - 1e-9 <= y <= bottom + 1e-9
    assert seen(0, 0, 0) == (0, 0)
