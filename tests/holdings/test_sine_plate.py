"""Stacks under a sine bar, against the sine."""

from __future__ import annotations

import math

import pytest

from jobsheet.holdings.kinds import sine_plate


@pytest.mark.parametrize(("degrees", "stack"), [(27, 2.270), (18, 1.545)])
def test_stack_of_a_five_inch_sine_bar(degrees, stack):
    """D 7: published worked examples for a 5 in bar."""
    assert sine_plate.stack_for(5.0, math.radians(degrees)) == pytest.approx(stack, abs=6e-4)


def test_stack_of_a_hundred_millimetres():
    """B2: L 100, 12.5°: 21.644."""
    assert sine_plate.stack_for(100, math.radians(12.5)) == pytest.approx(21.644, abs=5e-4)
