"""How much thin work may give way: a quarter of its limits, and never more than 15 µm."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.model.shape import Edge, Hole, Slab
from jobsheet.review.rules.holders.jack_under_thin_work import _most, _places
from jobsheet.stages.course import Sized


@pytest.mark.parametrize(
    ("measure", "most"),
    [(None, 15), ("8", 15), ("8 ±0.1", 15), ("8 ±0.03", 15), ("8 ±0.02", 10), ("8 ±0.01", 5)],
)
def test_a_quarter_of_its_limits_and_no_more_than_fifteen(measure, most):
    size = read_size(measure, "mm") if measure else None
    assert _most(SimpleNamespace(fields=SimpleNamespace(measure=size))) * 1e6 == pytest.approx(most)


@pytest.mark.parametrize(
    ("shape", "corners", "at"),
    [
        (Slab(0.001), (), 50), (Edge("front", 0.002, 0.01), (), 50), (Edge("rear", 0.002, 0.01), (), 50), (Edge("left", 0.002, 0.01), (), None),
        (Hole(0, 0, 0.005, None), ((0.020, 0.01),), 20), (Hole(0, 0, 0.005, None), ((0.020, 0.01), (0.070, 0.01)), 50),
        (Hole(0, 0, 0.005, None), ((0.060, 0.01), (0.090, 0.01)), 60), (Hole(0, 0, 0.005, None), ((0.010, 0.01), (0.040, 0.01)), 40),
        # Beside the bar the end is nearest.
        (Hole(0, 0, 0.005, None), ((0.120, 0.01),), 100), (Hole(0, 0, 0.005, None), ((-0.010, 0.01),), 0), (Hole(0, 0, 0.005, None), (), None),
    ],
)  # fmt: skip
def test_a_cut_passes_as_near_to_the_middle_of_a_bar_of_a_hundred_as_it_comes(shape, corners, at):
    step = SimpleNamespace(cut=SimpleNamespace(shapes=(Sized(shape=shape, corners=corners),)))
    found = list(_places(step, 0.100))
    assert found == ([] if at is None else [pytest.approx(at * 1e-3)])
