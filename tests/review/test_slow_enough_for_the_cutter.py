"""Cutters that are offered where a machine turns too fast: of those that are sold the largest that goes."""

from __future__ import annotations

import math
from types import SimpleNamespace

import pytest

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.review.rules.order import slow_enough_for_the_cutter

INCH = 0.0254

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
