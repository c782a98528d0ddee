"""Sweeps: every value that the program starts with, against diameter, depth, width and metal; nothing jumps.

What may: a standard size (a row of a chart is taken as a whole), a step of the machine's pulleys,
a line of a dial, a count of passes, layers, pecks or teeth. Where one of these makes a jump it
stands in `JUMPS`, with its reason.
"""

from __future__ import annotations

import itertools
import math

import pytest
from msgspec.structs import replace

from jobsheet.catalog.cuts.feeds import drill_feed, end_mill_feed, feed_as_drill
from jobsheet.catalog.cuts.fluids import deep_hole, drilling_speed
from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.reaming import reaming_stock
from jobsheet.operations.shared.advice import table_feed_per_turn
from jobsheet.reckoning.adviser.milling_cut import feed_text
from tests.operations.hole_steps import Step

METALS = ["S235", "4140 prehard", "304", "EN-GJL-250", "6082-T6", "C360", "Ti-6Al-4V", "Inconel 718"]
#: From 0.5 to 60 mm, each a fifth of a per cent larger than the one before: 5 %
#: between two of them is a cliff.
STEP = 1.002
SIZES = [0.5e-3 * STEP**count for count in range(1 + int(math.log(120) / math.log(STEP)))]
CLIFF = 0.05
#: A drill a hundredth larger changes nothing by more than three.
HUNDREDTH = 0.03


def jumps(values, limit=CLIFF):
    """Where two neighbours differ by more than a cliff."""
    return [
        (index, one, other)
        for index, (one, other) in enumerate(itertools.pairwise(values))
        if abs(other - one) > limit * max(abs(one), abs(other))
    ]


BY_DIAMETER = {
    "drill feed": drill_feed,
    "counterbore feed": lambda d, metal: feed_as_drill("counterbore", d, metal),
    "countersink feed": lambda d, metal: feed_as_drill("countersink", d, metal),
    "spot drill feed": lambda d, metal: feed_as_drill("spot drill", d, metal),
    "end mill feed": end_mill_feed,
    "end mill feed in a slot": lambda d, metal: end_mill_feed(d, metal, cut="slot"),
    "carbide end mill feed": lambda d, metal: end_mill_feed(d, metal, carbide=True),
    "carbide finishing feed": lambda d, metal: end_mill_feed(d, metal, carbide=True, cut="finish"),
}
#: What jumps, where [mm], and why.
JUMPS = {
    "reaming stock": (
        reaming_stock,
        [0.170 * 25.4, 0.280 * 25.4, 0.880 * 25.4],
        "rows of a published chart, and what leaves the stock is a drill of a standard size",
    ),
}


@pytest.mark.parametrize("metal", METALS)
@pytest.mark.parametrize("name", BY_DIAMETER)
def test_no_default_jumps_with_the_diameter(name, metal):
    found = [BY_DIAMETER[name](size, find(metal)) for size in SIZES]
    for part in ("low", "value", "high"):
        assert jumps([getattr(one, part) for one in found]) == []


@pytest.mark.parametrize("name", JUMPS)
def test_what_jumps_does_so_where_it_is_listed(name):
    ask, places, _why = JUMPS[name]
    found = jumps([ask(size).value for size in SIZES])
    assert [SIZES[index] * 1e3 for index, _, _ in found] == pytest.approx(places, rel=2 * (STEP - 1))


@pytest.mark.parametrize("metal", METALS)
def test_a_drill_a_hundredth_larger_changes_nothing_by_more_than_three(metal):
    for size in SIZES:
        one, other = (drill_feed(each, find(metal)).value for each in (size, size * 1.01))
        assert one <= other * (1 + 1e-9) <= one * (1 + HUNDREDTH)


@pytest.mark.parametrize("fluid", ["flood", "brushed", "dripped", "dry"])
def test_no_speed_jumps_with_the_depth_of_a_hole(fluid):
    depths = [hundredths / 100 for hundredths in range(1001)]
    assert jumps([drilling_speed(fluid, depth).value for depth in depths], 0.01) == []
    assert jumps([deep_hole(depth)[1].value for depth in depths], 0.01) == []


@pytest.mark.parametrize("metal", METALS)
@pytest.mark.parametrize("kind", ["drill", "ream"])
def test_the_speed_wanted_falls_evenly_with_depth_and_diameter(kind, metal):
    """What is set is a step of the machine; what is wanted is not."""

    def wanted(size, depth):
        texts = {
            "cutter": f"{'drill' if kind == 'drill' else 'reamer'} {size:.4f}",
            "depth": f"{depth:.4f}",
            "feed": "0.1",
        }
        pilot = None if kind == "drill" else size * 0.98e-3
        return Step(kind, texts, material=metal, pilot=pilot).value("wanted_speed")

    assert jumps([wanted(8, depth / 10) for depth in range(5, 500, 2)]) == []
    assert jumps([wanted(size / 50, 30) for size in range(150, 1500)]) == []


@pytest.mark.parametrize("units", ["mm", "in"])
def test_what_is_offered_to_be_typed_has_no_cliff_either(units):
    """The text is rounded down: one line of its last figure is never more than five in a hundred."""
    unit = 25.4 if units == "in" else 1.0
    step = Step("drill", {"cutter": "drill 10 mm", "depth": "5 mm", "feed": "0.1 mm"}, material="S235")
    setting = replace(step.setting, units=units)
    found = []
    for size in SIZES:
        cutter = replace(step.fields.cutter, diameter=size)
        _, text = feed_text(table_feed_per_turn("drill", cutter, setting).value, units)
        found.append(float(text.split()[0]) * unit)
    assert jumps(found, CLIFF * 1.0001) == []
