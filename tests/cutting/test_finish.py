"""Finish: squares of the feed."""

from __future__ import annotations

import pytest

from jobsheet.cutting import finish


def test_twice_the_feed_is_four_times_as_rough():
    assert finish.nose_roughness(0.4e-3, 0.8e-3) == pytest.approx(4 * finish.nose_roughness(0.2e-3, 0.8e-3))
    assert finish.side_roughness(0.4e-3, 10e-3) == pytest.approx(4 * finish.side_roughness(0.2e-3, 10e-3))


def test_a_side_is_a_nose_of_half_the_diameter():
    assert finish.side_roughness(0.2e-3, 10e-3) == pytest.approx(finish.nose_roughness(0.2e-3, 5e-3))


def test_one_proud_tooth_of_four_is_sixteen_times_as_rough():
    assert finish.side_roughness(4 * 0.05e-3, 12e-3) == pytest.approx(
        16 * finish.side_roughness(0.05e-3, 12e-3)
    )
