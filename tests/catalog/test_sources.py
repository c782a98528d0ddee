"""Where a number comes from, in words that can be printed."""

from __future__ import annotations

import math

import pytest

from jobsheet.catalog.metals.materials import find, own_names
from jobsheet.catalog.reading.sources import table, words


def test_every_constant_of_every_material_names_a_source():
    for name in own_names():
        material = find(name)
        for constant in (material.kc11, material.mc, material.kd_torque, material.kd_thrust):
            assert words(constant.source)
            assert constant.trust
            assert math.isfinite(constant.value)
            assert constant.value > 0


def test_a_source_names_publisher_title_edition_and_page():
    assert words("tun-d") == "Tungaloy, General catalogue, forces of twist drills, 2020, page 1656 (read)"
    assert words("mh31").startswith("Industrial Press, Machinery's Handbook, 31st edition, 2020, pages 1147")


def test_where_two_sources_give_a_formula_the_handbook_stands_first():
    for key in ("mit-f", "tapmatic"):
        assert words(key).startswith("Industrial Press, Machinery's Handbook")
        assert table()[key]["author"] in words(key)


@pytest.mark.parametrize("key", table())
def test_every_source_can_be_looked_up_or_is_called_common_practice(key):
    """An unsigned sheet, a discussion, an encyclopaedia's repetition, a private
    page: nobody finds what stood there.
    """
    row, said = table()[key], words(key)
    if row.get("private") or key == "common-practice":
        assert said == "common practice, no source"
        return
    assert row["author"] != "unknown"
    assert row["author"] in said
    assert row["title"] in said
    for word in ("wikipedia", ".com", ".info", "encyclop", "discussion", "blog", "forum"):
        assert word not in said.casefold()
