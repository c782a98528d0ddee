"""How fast an edge may run: a published top, never nearer to the start than a third over it."""

from __future__ import annotations

import pytest

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.operations.shared.fastest import OVER_START, edge_speed
from tests.limits.one_cut import around


def edge(cutter, metal="S235", work="mill", **more):
    return edge_speed(around(metal=metal, **more), read_cutter(cutter, "mm"), work)


@pytest.mark.parametrize("metal", ["S235", "6082-T6", "304", "EN-GJL-250"])
@pytest.mark.parametrize(
    "cutter", ["end mill 12 mm, 4 teeth", "end mill 12 mm, 4 teeth, carbide", "fly cutter 80 mm, carbide"]
)
def test_the_top_is_at_least_a_third_over_the_start(metal, cutter):
    found = edge(cutter, metal)
    assert found.top >= found.start * OVER_START * (1 - 1e-9)
    assert bool(found.source) or found.top == pytest.approx(found.start * OVER_START)


def test_nothing_published_holds_for_one_tooth_on_an_arm():
    assert edge("fly cutter 80 mm, carbide").source == ""


def test_carbide_rubs_in_steel_where_it_is_far_too_slow_and_nothing_is_said_of_other_edges():
    assert edge("end mill 12 mm, 4 teeth, carbide").least > 0
    assert edge("end mill 12 mm, 4 teeth").least is None
    assert edge("end mill 12 mm, 4 teeth, carbide", "6082-T6").least is None
    assert edge("drill 8 mm, carbide", work="drill").least is None


def test_a_brush_takes_of_the_top_what_it_takes_of_the_start():
    brushed, flood = edge("end mill 20 mm, 4 teeth"), edge("end mill 20 mm, 4 teeth", fluid="flood")
    assert brushed.start / flood.start == pytest.approx(0.7)
    assert brushed.top <= flood.top
