"""Speeds of a material by the work that is done, each with its source."""

from __future__ import annotations

import pytest

from jobsheet.catalog.metals.materials import find, own_names


@pytest.mark.parametrize("work", ["mill", "drill", "ream", "tap"])
def test_a_speed_and_its_source_are_the_same_number(work):
    for name in own_names():
        material = find(name)
        speed, source = material.speed(work), material.speed_source(work)
        assert (speed is None) == (source is None)
        if speed is not None:
            assert source.value == speed > 0
            assert source.source


def test_what_nobody_published_is_none():
    steel = find("S235")
    assert steel.speed("turn") is None
    assert steel.fastest_of("turn") is None
    assert steel.speed_source("turn") is None


def test_a_published_top_is_found_by_its_work_with_its_source():
    tops = [find(name).fastest_of("mill") for name in own_names()]
    assert any(tops)
    assert all(one.value > 0 and one.source for one in tops if one is not None)
