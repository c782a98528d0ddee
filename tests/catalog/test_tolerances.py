"""Limits of size: a tolerance without a unit takes that of its size, whatever a bare number means."""

from __future__ import annotations

import pytest

from jobsheet.catalog.trade.tolerances import read_size


@pytest.mark.parametrize("text", ["16 mm +0.05/0", "16 +0.05/0 mm", "16 mm +0.05/0 mm"])
@pytest.mark.parametrize("system", ["mm", "in"])
def test_two_limits(text, system):
    found = read_size(text, system)
    assert (found.low, found.high) == (pytest.approx(16e-3), pytest.approx(16.05e-3))


@pytest.mark.parametrize("text", ["16 mm ±0.05", "16 ±0.05 mm", "16 mm ±0.05 mm"])
@pytest.mark.parametrize("system", ["mm", "in"])
def test_plus_or_minus(text, system):
    found = read_size(text, system)
    assert (found.low, found.high) == (pytest.approx(15.95e-3), pytest.approx(16.05e-3))


def test_bare_is_in_the_units_of_the_job():
    assert read_size("0.5 +0.002/0", "in").high == pytest.approx(0.502 * 25.4e-3)
