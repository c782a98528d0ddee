"""Angles of engagement: a slot, half the cutter, and what has no meaning."""

from __future__ import annotations

from math import pi, sin

import pytest
from hypothesis import given

from jobsheet.cutting import chip
from jobsheet.cutting.textbook import angles_of_engagement, chip_thicknesses

from .drawn_sizes import parts


def test_half_the_cutter_spans_a_right_angle_and_a_slot_two():
    assert angles_of_engagement.engagement_angle(5, 10) == pytest.approx(pi / 2)
    assert angles_of_engagement.engagement_angle(10, 10) == pytest.approx(pi)
    assert angles_of_engagement.centred_engagement_angle(10, 10) == pytest.approx(pi)


@given(parts)
def test_mean_is_the_integral_over_the_arc(part):
    arc = angles_of_engagement.engagement_angle(part, 1.0)
    steps = 400
    integral = sum(sin((step + 0.5) / steps * arc) for step in range(steps)) / steps
    assert chip_thicknesses.mean_chip_thickness(1.0, part, 1.0) == pytest.approx(integral, rel=1e-4)
    assert chip.arc_chip_thickness(1.0, 0.0, arc) == pytest.approx(integral, rel=1e-4)


def test_the_last_bit_of_a_slot_is_no_refusal():
    diameter = 0.1 + 0.2
    assert angles_of_engagement.engagement_angle(0.3 * (1 + 1e-15), diameter) == pytest.approx(pi)
