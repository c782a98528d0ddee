"""The size to begin at: its width by a search beside the program, its caps, and how it is
rounded (holding-and-more-kinds C4).
"""

from __future__ import annotations

import math
from itertools import pairwise
from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.limits.as_depth import depth_of, said
from jobsheet.limits.first_cut import first_cut
from jobsheet.model.figure import Figure, Figures, Step
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.storage.card_files import find_card

END_MILL = "end mill 12 mm, 4 teeth, 30 mm out"
INCH = 25.4e-3
#: How much more a frame bears of a cut at the side, by its share of the cutter
#: (corrections, the row of cutting-data 1.9).
BEARS = (
    (0.05, 4.0),
    (0.1, 3.4),
    (0.2, 2.13),
    (0.3, 1.70),
    (0.5, 1.32),
    (0.75, 1.10),
    (0.9, 1.03),
    (1.0, 1.0),
)


def figures(depth=None, **values):
    inputs = () if depth is None else (("depth", depth), ("kt", 3e9))
    working = (Step("power", "x", (("depth", 9.0),), 1.0), Step("cutting_stiffness", "y", inputs, 1e6))
    return Figures(tuple(Figure(name, value, "", "") for name, value in values.items()), working=working)


def begin(made, process="", cutter=END_MILL, share=1.0, machine="bench-mill-b-1", metal="S235", units="mm", shop=None):  # fmt: skip
    setting = Setting(machine=find_card(machine), material=find(metal), units=units, shop=shop or Shop())
    fields = SimpleNamespace(cutter=read_cutter(cutter, "mm"))
    return first_cut(made, setting, fields, process, share)


@pytest.mark.parametrize(
    ("millimetres", "words"),
    [
        (12.38, "12.3 mm"), (2.37, "2.3 mm"), (1.0, "1 mm"), (0.9999, "0.95 mm"), (0.94, "0.9 mm"), (0.55, "0.55 mm"),
        (0.2, "0.2 mm"), (0.199, "0.19 mm"), (0.19, "0.19 mm"), (0.125, "0.12 mm"), (0.004, "0.01 mm"),
    ],
)  # fmt: skip
def test_rounded_down_to_what_a_dial_sets(millimetres, words):
    """Tenths from a millimetre on, halves of a tenth down to two tenths, then hundredths; never nought."""
    assert begin(figures(depth=millimetres * 1e-3)) == f"{words} deep"


@pytest.mark.parametrize(
    ("inches", "words"),
    [
        (0.1, "0.1 in"), (0.1249, "0.12 in"), (0.0523, "0.05 in"), (0.05, "0.05 in"), (0.0499, "0.0495 in"), (0.0107, "0.0105 in"),
        (0.008, "0.008 in"), (0.0001, "0.0005 in"),
    ],
)  # fmt: skip
def test_rounded_down_to_thousandths(inches, words):
    """Five thou from fifty on, half a thou under it."""
    assert begin(figures(depth=inches * INCH), units="in") == f"{words} deep"


def test_a_share_of_what_is_asked_is_that_share_of_the_depth():
    assert begin(figures(depth=4e-3), share=0.6) == "2.4 mm deep"


def test_without_a_depth_it_is_only_lighter():
    assert begin(figures()) == "a lighter cut"
    assert begin(Figures(), "side") == "a lighter cut"


SLOT, FACE, FLY = (
    "slot drill 12 mm, 2 teeth",
    "face mill 50 mm, 4 teeth, carbide",
    "fly cutter 60 mm, carbide",
)


@pytest.mark.parametrize(
    ("process", "cutter", "machine", "metal", "words"),
    [
        ("face", FACE, "bench-mill-b-1", "S235", "0.5 mm"), ("face", END_MILL, "bench-mill-b-1", "S235", "0.5 mm"),
        ("slot", FACE, "bench-mill-b-1", "S235", "0.5 mm"), ("", FLY, "bench-mill-b-1", "S235", "0.5 mm"),
        ("face", FACE, "bench-mill-b-1", "304", "0.3 mm"), ("face", FACE, "knee-mill-k-2", "304", "2 mm"),
        ("face", FACE, "knee-mill-k-2", "S235", "2 mm"), ("face", FACE, "", "S235", "9 mm"),
        # A slot: a quarter of the cutter on a bench machine, half of it on a larger
        # one (sequencing rules, section 5).
        ("slot", SLOT, "bench-mill-b-1", "S235", "3 mm"), ("slot", SLOT, "knee-mill-k-2", "S235", "6 mm"),
        ("slot", "slot drill", "bench-mill-b-1", "S235", "9 mm"),  # of no size
        # Anything else only by what it asks.
        ("", END_MILL, "bench-mill-b-1", "304", "9 mm"), ("side", END_MILL, "bench-mill-b-1", "S235", "9 mm"),
    ],
)  # fmt: skip
def test_caps_of_practice(process, cutter, machine, metal, words):
    card = find_card(machine or "bench-mill-b-1")
    setting = Setting(machine=card if machine else replace(card, stiffness_class=""), material=find(metal))
    fields = SimpleNamespace(cutter=read_cutter(cutter, "mm"))
    assert first_cut(figures(depth=9e-3), setting, fields, process, 1.0) == f"{words} deep"
    # A cap raises nothing.
    assert first_cut(figures(depth=0.25e-3), setting, fields, process, 1.0) == "0.25 mm deep"


def test_a_workshop_that_takes_slots_thinner_is_not_overruled():
    assert begin(figures(depth=9e-3), "slot", SLOT, shop=Shop(slot_layer=0.1)) == "1.2 mm deep"
    assert begin(figures(depth=9e-3), "slot", SLOT, shop=Shop(slot_layer_bench=0.1), machine="knee-mill-k-2") == "6 mm deep"  # fmt: skip


def bears(share):
    """The table read between its rows."""
    if share <= BEARS[0][0]:
        return BEARS[0][1]
    for (low, first), (high, last) in pairwise(BEARS):
        if share <= high:
            return first + (last - first) * (share - low) / (high - low)
    return 1.0


def asked(width, diameter, mc, slope):
    """What a side cut asks, but for its depth: teeth in cut × force of the mean
    chip / direction, all to a factor.

    Mean chip f sin κ (1 − cos φ) / φ; the force goes with its power −mc (Kienzle).
    """
    arc = math.acos(1 - 2 * width / diameter)
    chip = 0.05 * math.sin(slope) * (1 - math.cos(arc)) / arc
    return arc * chip**-mc / bears(width / diameter)


@pytest.mark.parametrize("slope", [90, 45])
@pytest.mark.parametrize("metal", ["S235", "6082-T6"])
@pytest.mark.parametrize(
    ("now", "share"), [(6.0, 0.7), (6.0, 0.45), (6.0, 0.3), (3.0, 0.8), (3.0, 0.5), (11.0, 0.9), (12.0, 0.5), (4.0, 0.999)]
)  # fmt: skip
def test_the_width_is_the_largest_that_asks_no_more(now, share, metal, slope):
    """Looked for in steps of a micrometre, from the narrowest up, beside the program."""
    mc, angle = find(metal).mc.value, math.radians(slope)
    most = share * asked(now, 12.0, mc, angle)
    wide = max(
        step / 1000 for step in range(100, round(now * 1000)) if asked(step / 1000, 12.0, mc, angle) <= most
    )
    step = 0.1 if wide >= 1 else 0.05 if wide >= 0.2 else 0.01
    words = begin(
        figures(depth=20e-3, width_of_cut=now * 1e-3, feed_per_tooth=0.05e-3), "side", f"{END_MILL}, entering {slope}°",
        share=share, metal=metal,
    )  # fmt: skip
    assert words.endswith(" mm wide")
    # Down to a step of the dial; a width just at a step may be a rounding under it.
    assert wide - step - 0.012 <= float(words.split()[0]) <= wide + 1e-9


@pytest.mark.parametrize(
    ("more", "share"),
    [
        ({"width_of_cut": 3e-3, "feed_per_tooth": 5e-5}, 1e-3),  # even a tenth of a millimetre asks more
        ({"width_of_cut": 0.05e-3, "feed_per_tooth": 5e-5}, 0.5),  # it is narrower than that already
        ({"feed_per_tooth": 5e-5}, 0.5), ({"width_of_cut": 3e-3}, 0.5),
        ({"width_of_cut": 3e-3, "feed_per_tooth": 5e-5, "layers": 2.0}, 0.5),  # in layers the depth is free
    ],
)  # fmt: skip
def test_where_no_width_helps_it_is_the_depth(more, share):
    found = begin(figures(depth=8e-3, **more), "side", share=share)
    assert found == f"{'0.01' if share < 0.1 else '4'} mm deep"


def test_one_layer_or_none_leaves_the_width_free_and_only_at_the_side():
    values = {"width_of_cut": 6e-3, "feed_per_tooth": 5e-5}
    for layers in ({}, {"layers": 1.0}):
        assert begin(figures(depth=8e-3, **values, **layers), "side", share=0.5).endswith("wide")
    assert begin(figures(depth=8e-3, **values), "", share=0.5) == "4 mm deep"
    assert begin(figures(depth=8e-3, **values), "side", "end mill", share=0.5) == "4 mm deep"  # of no size


def test_the_depth_is_that_of_the_demand_s_own_working():
    assert depth_of(figures(depth=2e-3)) == 2e-3
    assert depth_of(figures()) is None
    assert depth_of(Figures()) is None


@pytest.mark.parametrize(
    ("depth", "units", "words"),
    [
        (2e-3, "mm", "2 mm"), (1.234e-3, "mm", "1.23 mm"), (9.994e-3, "mm", "9.99 mm"), (10e-3, "mm", "10 mm"),
        (10.04e-3, "mm", "10 mm"), (12.34e-3, "mm", "12.3 mm"), (0.0508e-3 * 50, "in", "0.1 in"), (INCH * 0.12349, "in", "0.123 in"),
    ],
)  # fmt: skip
def test_a_depth_to_two_figures_or_three(depth, units, words):
    assert said(depth, units) == words
    assert said(depth, units, name=False) == words.split()[0]
