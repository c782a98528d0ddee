"""Limits of size: a tolerance without a unit takes that of its size, whatever a bare number means."""

from __future__ import annotations

import re

import pytest

from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.errors import QuantityError


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


@pytest.mark.parametrize("text", ["40 ±50", "40 ±40", "5 +1/-5", "0.004 h9"])
def test_no_size_may_come_down_to_nothing(text):
    """A body has no length of nought or less: 40 - 40 is nought, and h9 to 3 mm is 25 µm wide (ISO 286-1)."""
    with pytest.raises(QuantityError, match=f"The lower limit of “{re.escape(text)}” must be above zero"):
        read_size(text)


def test_the_smallest_that_is_left_may_be_as_little_as_one_likes():
    assert read_size("40 ±39.999").low == pytest.approx(1e-6)
