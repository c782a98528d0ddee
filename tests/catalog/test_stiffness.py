"""Moduli against the table of the book that is named, in GPa."""

from __future__ import annotations

import pytest

from jobsheet.catalog.metals.materials import all_materials
from jobsheet.catalog.metals.stiffness import modulus


@pytest.mark.parametrize(
    ("family", "giga"),
    [
        ("steel", 207), ("stainless", 190), ("iron", 100), ("aluminium", 71), ("copper", 106), ("magnesium", 45),
        ("titanium", 114), ("nickel", 214), ("plastic", 3),
    ],
)  # fmt: skip
def test_the_table(family, giga):
    assert modulus(family) == pytest.approx(giga * 1e9)


def test_every_shipped_metal_has_one():
    assert all(modulus(one.family) for one in all_materials())
    assert modulus("wood") is None
