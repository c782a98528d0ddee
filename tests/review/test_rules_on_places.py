"""What single rules reckon with, asked without a plan: pairs of holes, depths below the work, sizes of cutters."""

from __future__ import annotations

import math
import random
from itertools import combinations
from types import SimpleNamespace

import pytest

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.review.rules.holes import no_deeper_than_the_work, wall_beside_a_hole
from jobsheet.review.rules.order import slow_enough_for_the_cutter

INCH = 0.0254


def hole(face, x, y, diameter, index):
    return SimpleNamespace(face=face, at=(x, y)), SimpleNamespace(diameter=diameter, index=index)


@pytest.mark.parametrize("seed", range(8))
def test_every_pair_with_little_between_is_looked_at_once(seed):
    """Against all pairs there are: what is left between two circles is the way between their middles less both halves."""
    draw = random.Random(seed)
    holes = [
        hole(
            draw.choice(("top", "left")),
            draw.uniform(0, 0.1),
            draw.uniform(0, 0.1),
            draw.choice((0.003, 0.008, 0.020)),
            index,
        )
        for index in range(30)
    ]
    wanted = {}
    for (one, first), (other, second) in combinations(holes, 2):  # by index: the first is made first
        wall = math.dist(one.at, other.at) - (first.diameter + second.diameter) / 2
        if one.face == other.face and wall < 0.5 * min(first.diameter, second.diameter):
            wanted[first.index, second.index] = wall
    looked = [(one[1].index, other[1].index, wall) for wall, one, other in wall_beside_a_hole._near(holes)]
    found = {(one, other): wall for one, other, wall in looked}
    assert len(found) == len(looked)
    assert all(one < other for one, other in found)
    assert {pair: found.get(pair) for pair in wanted} == pytest.approx(wanted)
    near = 1.5 * 0.020  # no more than a wall and both halves apart along either axis
    assert all(
        abs(holes[one][0].at[axis] - holes[other][0].at[axis]) <= near
        for one, other in found
        for axis in (0, 1)
    )
    assert wall_beside_a_hole._near([]) is not None
    assert not list(wall_beside_a_hole._near([]))


@pytest.mark.parametrize(
    ("deed", "below"),
    [
        # A drill of 10: its point is three tenths long; reamer and tap run out a diameter; 2 mm of room for each.
        ("drill", 5.0), ("plunge", 2.0), ("bore", 2.0), ("spot", 2.0), ("ream", 12.0), ("tap", 12.0), ("countersink", None), ("", None),
    ],
)  # fmt: skip
def test_how_far_below_the_work_a_tool_may_go(deed, below):
    fields = SimpleNamespace(cutter=SimpleNamespace(diameter=0.010))
    step = SimpleNamespace(roles=SimpleNamespace(mills="", hole=deed), fields=fields)
    found = no_deeper_than_the_work._needs(step)
    assert found == (None if below is None else pytest.approx(below * 1e-3))
    bare = SimpleNamespace(roles=step.roles, fields=SimpleNamespace(cutter=None))
    assert no_deeper_than_the_work._needs(bare) is None
    no_size = SimpleNamespace(roles=step.roles, fields=SimpleNamespace(cutter=SimpleNamespace(diameter=None)))
    assert no_deeper_than_the_work._needs(no_size) == (None if below is None else pytest.approx(0.002))


@pytest.mark.parametrize(
    ("mills", "below"), [("groove", 0.002), ("recess", 0.002), ("flat", None), ("wall", None)]
)
def test_what_is_milled_goes_two_millimetres_below(mills, below):
    step = SimpleNamespace(roles=SimpleNamespace(mills=mills, hole=""), fields=SimpleNamespace())
    assert no_deeper_than_the_work._needs(step) == below


#: Sizes of end mills as they are sold (DIN 844 and ASME B94.19, from memory).
SOLD = {
    "mm": (3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 63, 80),
    "in": (1 / 8, 3 / 16, 1 / 4, 5 / 16, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 1, 1.25, 1.5, 2, 2.5, 3),
}


@pytest.mark.parametrize("units", ["mm", "in"])
def test_the_largest_cutter_that_is_slow_enough_is_one_that_is_sold(units):
    """The slowest speed is 3 turns a second; the edge may run as fast as a cutter of that very size then does."""
    cutter = read_cutter(f"end mill 100 {units}, 4 teeth", units)
    step = SimpleNamespace(
        key="x", roles=SimpleNamespace(mills="flat"), fields=SimpleNamespace(cutter=cutter)
    )
    size = {"mm": 1e-3, "in": INCH}[units]
    for sold, larger in zip(SOLD[units], (*SOLD[units][1:], 2 * SOLD[units][-1]), strict=True):
        for wide in (sold * 1.0001, larger * 0.9999):
            fix = slow_enough_for_the_cutter._smaller(step, math.pi * wide * size * 3.0, 3.0, units)
            assert fix.label == f"A cutter of {sold:g} {units}"
    too_fast = math.pi * SOLD[units][0] * 0.999 * size * 3.0
    assert slow_enough_for_the_cutter._smaller(step, too_fast, 3.0, units) is None
    for mills, offered in (("wall", True), ("groove", False), ("recess", False), ("", False)):
        other = SimpleNamespace(key="x", roles=SimpleNamespace(mills=mills), fields=step.fields)
        assert (slow_enough_for_the_cutter._smaller(other, 1.0, 3.0, units) is not None) is offered
