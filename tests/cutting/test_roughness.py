"""Roughness that edge and feed leave at best."""

from __future__ import annotations

from math import radians

import pytest

from jobsheet.cutting.textbook import roughness
from jobsheet.errors import CalcError


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
