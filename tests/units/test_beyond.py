"""Units that the table has not, by their definitions; what is no name of a unit is none."""

from __future__ import annotations

import pytest

from jobsheet.units.beyond import convert


@pytest.mark.parametrize(
    ("number", "unit", "wanted", "value"),
    [
        (1, "mile", "m", 1609.344),
        (1, "yard", "m", 0.9144),
        (1, "ton_force", "N", 8896.443230521),  # 2000 lbf
        (1, "bar", "Pa", 1e5),
        (90, "turn/minute", "rev/s", 1.5),
        (1, "hectare", "m^2", 1e4),
    ],
)
def test_by_their_definition(number, unit, wanted, value):
    assert convert(number, unit, wanted) == pytest.approx(value, rel=1e-6)


@pytest.mark.parametrize("unit", ["no_such_unit", "mm; import os", "3 mm + 1", "", "m" * 41, "(m)"])
def test_what_is_no_unit_is_none(unit):
    assert convert(1, unit, "m") is None


def test_another_thing_is_none():
    assert convert(1, "second", "m") is None
