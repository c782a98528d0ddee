"""The diameter of a ball cutter that counts for its speed."""

from __future__ import annotations

import pytest

from jobsheet.cutting.textbook.ball_cutter import ball_diameter
from jobsheet.errors import CalcError


def test_a_ball_cuts_its_whole_diameter_at_half_of_it():
    assert ball_diameter(5e-3, 10e-3) == pytest.approx(10e-3)
    with pytest.raises(CalcError, match="half the diameter"):
        ball_diameter(6e-3, 10e-3)
