"""Feeds, depths and the factors of fluid against the published tables and points one can do in one's head."""

from __future__ import annotations

import math

import msgspec
import pytest

from jobsheet.catalog.cuts.feeds import (
    drill_feed,
    end_mill_feed,
    face_mill_feed,
    feed_as_drill,
    feed_class,
    reamer_feed,
    share,
    table,
)
from jobsheet.catalog.metals.materials import all_materials, find
from jobsheet.catalog.metals.own_materials import FAMILIES, FEED_CLASSES
from jobsheet.catalog.reading.sources import table as sources
from jobsheet.cutting.drill_forces import drill_torque
from jobsheet.cutting.strength import drill_strength
from jobsheet.errors import CalcError, NoSuchEntry

INCH = 25.4
STEEL = find("S235")


def mm(value: float) -> float:
    return value * 1e3


#: A navy training manual's drill feeds, where its bands touch: inches of diameter, inches of feed.
NAVY = [(1 / 8, 0.002), (1 / 4, 0.004), (1 / 2, 0.007), (1, 0.015)]
#: The lowest and the highest feed of its bands: a diameter in mm, feeds in mm as they convert there.
BANDS = [(5, 0.05, 0.10), (10, 0.10, 0.18), (12, 0.10, 0.18), (20, 0.18, 0.38), (30, 0.38, 0.64)]


@pytest.mark.parametrize(("diameter", "feed"), NAVY)
def test_a_drill_in_mild_steel_takes_what_is_published_where_the_bands_touch(diameter, feed):
    """The curve's residuals at these four are 0, −3, +7 and −3 %; at 1/8 in the
    drill's own strength takes off some more.
    """
    found = drill_feed(diameter * 0.0254, STEEL)
    assert found.value / 0.0254 == pytest.approx(feed, rel=0.075 if diameter > 1 / 8 else 0.11)
    assert not found.outside


@pytest.mark.parametrize(("diameter", "low", "high"), BANDS)
def test_a_drill_starts_within_its_published_band(diameter, low, high):
    found = drill_feed(diameter * 1e-3, STEEL)
    assert low - 0.0051 <= mm(found.value) <= high + 0.0051
    assert found.low < found.value < found.high
    assert found.source == "navy"


@pytest.mark.parametrize(
    ("diameter", "feed"),
    # Holding and more kinds, C3: the curve, and below 4 mm half of the drill's strength.
    [
        (0.5, 0.0028),
        (1, 0.008),
        (1.5, 0.0147),
        (2, 0.0226),
        (5, 0.078),
        (8, 0.123),
        (10, 0.152),
        (12, 0.180),
        (20, 0.2936),
    ],
)
def test_the_curve_of_the_reference(diameter, feed):
    assert mm(drill_feed(diameter * 1e-3, STEEL).value) == pytest.approx(feed, abs=0.0006)


@pytest.mark.parametrize("material", ["S235", "304", "6061", "GG-25", "Inconel 718"])
@pytest.mark.parametrize("diameter", [0.5, 1, 2, 3])
def test_a_small_drill_keeps_half_of_its_strength(material, diameter):
    """A used drill, wear 1.3: torque over strength by the handbook's forms; a soft metal may ask less."""
    metal = find(material)
    size, feed = diameter * 1e-3, drill_feed(diameter * 1e-3, metal)
    torque = drill_torque(kd=metal.kd_torque.value, feed=feed.value, diameter=size, wear=1.3)
    assert torque / drill_strength(diameter=size) <= 0.52
    assert feed.outside == (diameter < 2)


def test_below_two_millimetres_the_start_is_marked_an_estimate():
    found = drill_feed(1.5e-3, STEEL)
    assert found.source == "estimate"
    assert found.outside
    assert "an estimate" in found.why


@pytest.mark.parametrize(
    ("name", "factor"),
    [
        ("1018", 1.0), ("4140 annealed", 0.8), ("4140 prehard", 0.6), ("D2", 0.6), ("304", 0.7), ("GG-25", 1.1),
        ("6061", 1.2), ("C360", 1.1), ("C110", 0.9), ("Ti-6Al-4V", 0.6), ("Inconel 718", 0.5), ("POM", 1.0),
    ],
)  # fmt: skip
def test_metals_ask_for_more_or_less(name, factor):
    soft, other = drill_feed(20e-3, STEEL), drill_feed(20e-3, find(name))
    assert other.value == pytest.approx(soft.value * factor)
    assert (factor == 1) != ("×" in other.why)


def test_a_metal_that_hardens_is_never_rubbed():
    """0.002 in at least, but for drills that it would twist off."""
    stainless, nickel = find("304"), find("Inconel 718")
    assert mm(drill_feed(4e-3, stainless).value) == pytest.approx(0.002 * INCH)
    assert "hardens" in drill_feed(4e-3, stainless).why
    assert mm(drill_feed(20e-3, nickel).value) == pytest.approx(0.293 * 0.5, abs=0.0006)
    assert mm(drill_feed(5e-3, stainless).low) == pytest.approx(0.002 * INCH)
    assert mm(drill_feed(1.5e-3, nickel).value) < 0.0147


@pytest.mark.parametrize("diameter", [0.5e-3, 60e-3])
def test_drills_that_the_table_does_not_reach_are_marked(diameter):
    assert drill_feed(diameter, STEEL).outside


#: The start table for high speed steel end mills: metal, diameter mm, feed per tooth mm.
START = [
    ("S235", 3, 0.010), ("S235", 12, 0.055), ("S235", 25, 0.110), ("4140 annealed", 10, 0.032), ("304", 6, 0.018),
    ("D2", 20, 0.070), ("GG-25", 16, 0.080), ("6061", 8, 0.055), ("C360", 5, 0.030), ("POM", 12, 0.12),
    ("Ti-6Al-4V", 10, 0.032 * 0.7), ("Inconel 718", 20, 0.070 * 0.6),
]  # fmt: skip


@pytest.mark.parametrize(("name", "diameter", "feed"), START)
def test_an_end_mill_starts_by_the_table(name, diameter, feed):
    found = end_mill_feed(diameter * 1e-3, find(name))
    assert mm(found.value) == pytest.approx(feed)
    assert found.low < found.value < found.high
    assert found.source == "common-practice"
    assert not found.outside


#: The published table for solid carbide: metal, diameter mm, feed per tooth mm.
CARBIDE = [
    ("S235", 3, 0.01), ("S235", 12, 0.10), ("S235", 16, 0.10), ("4140 prehard", 3, 0.008), ("GG-25", 20, 0.096),
    ("304", 10, 0.05), ("Ti-6Al-4V", 8, 0.025), ("6061", 16, 0.12), ("6061", 20, 0.16),
]  # fmt: skip


@pytest.mark.parametrize(("name", "diameter", "feed"), CARBIDE)
def test_a_carbide_end_mill_starts_by_its_makers_table(name, diameter, feed):
    found = end_mill_feed(diameter * 1e-3, find(name), carbide=True)
    assert (mm(found.value), found.source) == (pytest.approx(feed), "ata")


def test_slots_and_finishing_with_carbide():
    side = end_mill_feed(10e-3, STEEL, carbide=True)
    assert end_mill_feed(10e-3, STEEL, carbide=True, cut="slot").value == pytest.approx(0.7 * side.value)
    assert end_mill_feed(10e-3, STEEL, carbide=True, cut="finish").value == pytest.approx(1.2 * side.value)
    with pytest.raises(NoSuchEntry, match="side, slot, finish"):
        end_mill_feed(10e-3, STEEL, cut="plunge")


def test_between_two_rows_the_feed_is_between_them():
    assert mm(end_mill_feed(14e-3, STEEL).value) == pytest.approx(0.065)
    assert mm(end_mill_feed(4e-3, STEEL).value) == pytest.approx(0.015)


def test_outside_the_table_is_marked_and_stays_above_zero():
    small, large = end_mill_feed(1e-3, STEEL), end_mill_feed(30e-3, STEEL)
    assert small.outside
    assert large.outside
    assert mm(small.value) == pytest.approx(0.010 / 3)
    assert mm(large.value) == pytest.approx(0.130)  # 0.02 mm for every 5 mm goes on
    assert not end_mill_feed(3e-3, STEEL).outside
    assert not end_mill_feed(25e-3, STEEL).outside


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [("S235", 0.08, 0.15), ("316", 0.06, 0.12), ("GGG-40", 0.10, 0.20), ("7075", 0.10, 0.25)],
)
def test_a_face_mill_takes_the_middle_of_the_range(name, low, high):
    feed = face_mill_feed(find(name))
    assert (mm(feed.low), mm(feed.high)) == pytest.approx((low, high))
    assert mm(feed.value) == pytest.approx((low + high) / 2)


def test_a_reamer_by_its_flutes():
    feed = reamer_feed(6)
    assert mm(feed.value) == pytest.approx(0.0025 * INCH * 6)
    assert (mm(feed.low), mm(feed.high)) == pytest.approx((0.3048, 0.4572))
    with pytest.raises(CalcError):
        reamer_feed(0)


def test_tools_that_go_by_the_drill():
    drill = drill_feed(12e-3, STEEL)
    bore = feed_as_drill("counterbore", 12e-3, STEEL)
    assert (bore.low, bore.high) == (pytest.approx(0.5 * drill.value), pytest.approx(0.8 * drill.value))
    assert bore.value == pytest.approx(0.65 * drill.value)
    sink = feed_as_drill("countersink", 12e-3, STEEL)
    assert (sink.low, sink.value, sink.high) == pytest.approx((drill.low, drill.value, drill.high))
    assert share("countersink", "speed").value == 0.25
    assert 0.5 < share("counterbore", "speed").value < 2 / 3
    assert share("spot drill", "speed").value == 1
    assert (share("plunge", "speed").value, share("plunge", "feed").value) == (0.75, 0.25)
    with pytest.raises(NoSuchEntry):
        share("reamer", "speed")
    with pytest.raises(NoSuchEntry):
        share("plunge", "depth")


def test_every_class_has_its_place_in_every_table():
    rows = table()
    places = [rows["drills"]["factors"], rows["face mills"]["classes"]]
    places += [rows["end mills"][material]["classes"] for material in ("HSS", "carbide")]
    for place in places:
        assert set(place) - {"source"} == set(FEED_CLASSES)


def test_every_family_leads_to_a_class():
    for family in FAMILIES:
        assert feed_class(msgspec.structs.replace(STEEL, family=family, feed_class="")) in FEED_CLASSES
    assert feed_class(msgspec.structs.replace(STEEL, family="", feed_class="")) == "hard steel"


@pytest.mark.parametrize("material", all_materials(), ids=lambda material: material.name)
def test_every_suggestion_has_a_known_source_and_a_value_in_its_range(material):
    found = [drill_feed(8e-3, material), face_mill_feed(material)]
    found += [end_mill_feed(8e-3, material, carbide=carbide) for carbide in (False, True)]
    found += [feed_as_drill(tool, 8e-3, material) for tool in ("counterbore", "countersink", "spot drill")]
    for suggestion in found:
        assert 0 < suggestion.low <= suggestion.value <= suggestion.high
        assert suggestion.source in sources()
        assert suggestion.why


@pytest.mark.parametrize("bad", [0.0, -1e-3, math.nan, math.inf])
def test_no_diameter_no_feed(bad):
    for ask in (lambda: drill_feed(bad, STEEL), lambda: end_mill_feed(bad, STEEL)):
        with pytest.raises(CalcError):
            ask()
