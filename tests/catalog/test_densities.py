"""Weights of metals by their family, against what any table of densities has."""

from __future__ import annotations

import pytest

from jobsheet.catalog.metals.densities import density
from jobsheet.catalog.metals.materials import find, own_names


@pytest.mark.parametrize(
    ("family", "least", "most"),
    [("steel", 7750, 7900), ("iron", 7000, 7300), ("aluminium", 2650, 2850), ("titanium", 4400, 4550), ("magnesium", 1740, 1850)],
)  # fmt: skip
def test_a_family_lies_where_tables_have_it(family, least, most):
    """From memory of tables of engineering materials [kg/m³]."""
    assert least <= density(family) <= most


def test_what_is_no_family_has_none():
    assert density("") is None
    assert density("Steel") is None


def test_every_shipped_material_has_its_weight():
    assert {name for name in own_names() if density(find(name).family) is None} == set()
