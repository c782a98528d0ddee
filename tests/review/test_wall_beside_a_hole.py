"""Pairs of holes with little between them, against all pairs there are."""

from __future__ import annotations

import math
import random
from itertools import combinations
from types import SimpleNamespace

import pytest

from jobsheet.review.rules.holes import wall_beside_a_hole


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
    assert all(holes[one][0].face == holes[other][0].face for one, other in found)
    near = 1.5 * 0.020  # no more than a wall and both halves apart along either axis
    assert all(
        abs(holes[one][0].at[axis] - holes[other][0].at[axis]) <= near
        for one, other in found
        for axis in (0, 1)
    )
    assert not list(wall_beside_a_hole._near([]))
