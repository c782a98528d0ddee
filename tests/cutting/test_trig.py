"""Angles of ratios that may carry units."""

from __future__ import annotations

from math import pi

import pytest

from jobsheet.cutting import trig


def test_a_ratio_just_past_the_end_is_the_end():
    assert trig.acos(-1 - 1e-15) == pytest.approx(pi)
    assert trig.asin(1 + 1e-15) == pytest.approx(pi / 2)


def test_a_ratio_well_past_the_end_is_an_error():
    with pytest.raises(ValueError, match="math domain error"):
        trig.acos(1.1)


def test_a_ratio_of_unlike_units_is_a_number():
    import pint

    units = pint.UnitRegistry()
    assert trig.sin(units.Quantity(30, "degree")) == pytest.approx(0.5)
    assert trig.acos(units.Quantity(5, "mm") / units.Quantity(1, "cm")) == pytest.approx(pi / 3)
