"""What a round bar stands when it is twisted."""

from __future__ import annotations

from math import pi

import pytest

from jobsheet.cutting.strength import drill_strength
from jobsheet.cutting.textbook.torsion_strength import torsional_strength


def test_a_drill_is_as_strong_as_a_bar_of_half_its_diameter():
    assert drill_strength(6e-3) == pytest.approx(torsional_strength(1200e6, 3e-3))


def test_torsion_of_a_bar_for_the_head():
    assert torsional_strength(16 / pi, 1.0) == pytest.approx(1.0)
