"""A layer off a whole face: as long and as wide as the work, or as a flat on round bar is."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.model.quantity import Quantity
from jobsheet.operations.shared.flat_work import length_and_width, sweep, takes_off
from tests.limits.one_cut import around


class Bar:
    """A bar of 40 along x: a flat is as wide as its chord."""

    cross = 1

    def __init__(self, wide):
        self.wide = wide

    def width(self, deep):
        return self.wide


def fields(along="x", deep=0.5e-3):
    return SimpleNamespace(along=along, depth=Quantity(deep, "0.5"))


@pytest.mark.parametrize(("along", "expected"), [("x", (0.1, 0.06)), ("y", (0.06, 0.1))])
def test_along_the_feed_and_across_it(along, expected):
    assert length_and_width(fields(along), around(extent=(0.1, 0.06, 0.02))) == expected


def test_a_flat_on_a_bar_is_no_wider_than_its_chord():
    """A chord 6 under the top of 40: 2 √(20² − 14²) = 28.57."""
    setting = around(extent=(0.1, 0.04, 0.04), profile=Bar(0.02857))
    assert length_and_width(fields("x"), setting) == pytest.approx((0.1, 0.02857))
    assert length_and_width(fields("y"), setting) == pytest.approx((0.02857, 0.1))
    assert length_and_width(fields("x"), around(extent=(0.1, 0.04, 0.04), profile=Bar(None))) == (0.1, 0.04)


def test_the_layer_is_what_the_top_is_lower_by():
    (slab,) = sweep(fields(), around())
    assert slab.depth == takes_off(fields()) == 0.5e-3
