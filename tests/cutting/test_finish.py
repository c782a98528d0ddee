"""Finish: squares of the feed."""

from __future__ import annotations

from math import radians

import pytest

from jobsheet.cutting import finish
from jobsheet.cutting.textbook import roughness
from jobsheet.errors import CalcError


def test_twice_the_feed_is_four_times_as_rough():
    assert finish.nose_roughness(0.4e-3, 0.8e-3) == pytest.approx(4 * finish.nose_roughness(0.2e-3, 0.8e-3))
    assert finish.side_roughness(0.4e-3, 10e-3) == pytest.approx(4 * finish.side_roughness(0.2e-3, 10e-3))


def test_a_side_is_a_nose_of_half_the_diameter():
    assert finish.side_roughness(0.2e-3, 10e-3) == pytest.approx(finish.nose_roughness(0.2e-3, 5e-3))


def test_one_proud_tooth_of_four_is_sixteen_times_as_rough():
    assert finish.side_roughness(4 * 0.05e-3, 12e-3) == pytest.approx(
        16 * finish.side_roughness(0.05e-3, 12e-3)
    )


def test_mean_of_a_scallop_is_a_quarter_of_its_height():
    assert roughness.mean_roughness(1.0) == pytest.approx(0.2566, abs=5e-5)


def test_a_flat_face_edge_leaves_little():
    assert roughness.corner_roughness(0.1e-3, radians(90), radians(2)) == pytest.approx(
        0.1e-3 * 0.03492, rel=1e-3
    )


@pytest.mark.parametrize("angle", [0, -0.1, 1.6])
def test_refuses_an_angle_without_meaning(angle):
    with pytest.raises(CalcError, match="main"):
        roughness.corner_roughness(0.1e-3, angle, 0.1)
