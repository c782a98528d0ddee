"""The table of units, against the units library."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.units.grammar import read
from jobsheet.units.table import UNITS


@given(
    st.floats(min_value=1e-4, max_value=1e4),
    st.sampled_from([unit for unit in UNITS if unit.measures == "length"]),
)
def test_a_number_with_its_unit_comes_back(number, unit):
    assert read(f"{number:.9f} {unit.symbol}", "length") == pytest.approx(
        round(number, 9) * unit.size, rel=1e-9
    )


def test_every_unit_agrees_with_the_units_library():
    """Outside value: the units library, for every symbol that it knows by the same name."""
    import pint

    registry = pint.UnitRegistry()
    names = {
        "in": "inch", "thou": "thou", "ft": "foot", "µm": "micrometer", "in/min": "inch/minute", "ft/min": "foot/minute",
        "rpm": "turn/minute", "rev/s": "turn/second", "°": "degree", "N·m": "newton*meter", "lbf·ft": "force_pound*foot",
        "lbf·in": "force_pound*inch", "kgf": "kilogram_force", "hp": "horsepower", "cm³": "cm**3", "mm³": "mm**3",
        "in³": "inch**3", "cm³/min": "cm**3/minute", "mm³/s": "mm**3/s", "in³/min": "inch**3/minute", "N/µm": "N/micrometer",
        "min": "minute", "lbf": "force_pound", "lb": "pound", "%": "percent", "mm/min": "mm/minute", "m/min": "m/minute",
    }  # fmt: skip
    checked = 0
    for unit in UNITS:
        if unit.measures == "sound":
            continue
        quantity = registry.Quantity(1.0, names.get(unit.symbol, unit.symbol))
        expected = quantity.to_base_units()
        value = expected.magnitude
        if "turn" in names.get(unit.symbol, ""):
            value /= 2 * math.pi  # a turn counts as 1 here, as 2 pi radians there
        assert unit.size == pytest.approx(value, rel=1e-9), unit
        checked += 1
    assert checked >= 40
