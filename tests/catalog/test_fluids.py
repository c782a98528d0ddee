"""What is left of a start speed by the fluid and by how deep the hole is."""

from __future__ import annotations

import math

import pytest

from jobsheet.catalog.cuts.fluids import deep_hole, drilling_speed, fluid_speed
from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.reading.sources import table as sources
from jobsheet.errors import CalcError, NoSuchEntry


@pytest.mark.parametrize(
    ("fluid", "work", "dry", "factor"),
    [
        ("flood", "mill", False, 1.0), ("mist", "drill", False, 1.0), ("brushed", "mill", False, 0.7),
        ("dripped", "drill", False, 0.7), ("dry", "mill", False, 0.6), ("dry", "mill", True, 1.0),
        ("brushed", "drill", True, 1.0), ("brushed", "ream", False, 1.0), ("dripped", "tap", False, 1.0),
        ("dry", "ream", False, 0.6),
    ],
)  # fmt: skip
def test_fluid_takes_its_share_of_the_speed(fluid, work, dry, factor):
    found = fluid_speed(fluid, work, dry_by_nature=dry)
    assert found.value == factor
    assert found.low <= factor <= found.high
    assert found.source in sources()


def test_the_pages_own_speed_with_a_brush():
    speed = find("1018").speed("mill") * 60 * fluid_speed("brushed", "mill").value
    assert speed == pytest.approx(23.8)
    assert speed * 1000 / (math.pi * 12) == pytest.approx(631, abs=1)


@pytest.mark.parametrize(
    ("depth", "speed", "feed"),
    [
        (0, 1, 1), (2, 1, 1), (2.5, 0.95, 0.95), (3, 0.9, 0.9), (4, 0.8, 0.9), (4.5, 0.75, 0.85), (5, 0.7, 0.8), (6, 0.65, 0.8),
        (8, 0.6, 0.8),
    ],
)  # fmt: skip
def test_a_deep_hole_goes_slower(depth, speed, feed):
    found = deep_hole(depth)
    assert (found[0].value, found[1].value) == pytest.approx((speed, feed))
    assert not found[0].outside


def test_deeper_than_the_table_is_marked():
    assert deep_hole(10)[0].outside
    assert deep_hole(10)[0].value == 0.6
    assert drilling_speed("flood", 10).outside
    with pytest.raises(CalcError):
        deep_hole(-1)


def test_oil_by_hand_in_a_deep_hole_halves_once():
    assert drilling_speed("brushed", 3).value == pytest.approx(0.7 * 0.9)
    assert drilling_speed("brushed", 3.5).value == pytest.approx((0.63 + 0.5) / 2)
    assert drilling_speed("brushed", 4).value == 0.5
    assert drilling_speed("brushed", 4).source == "uf"
    assert drilling_speed("dripped", 8).value == pytest.approx(0.7 * 0.6)
    assert drilling_speed("flood", 4).value == 0.8
    assert drilling_speed("brushed", 4, dry_by_nature=True).value == 0.8
    assert drilling_speed("flood", 1).value == 1


def test_a_way_of_giving_fluid_that_there_is_not():
    with pytest.raises(NoSuchEntry, match="flood"):
        fluid_speed("bucket", "mill")
