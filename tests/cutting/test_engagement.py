"""How many teeth cut at once."""

from __future__ import annotations

from math import pi

import pytest

from jobsheet.cutting import engagement


def test_all_teeth_cut_in_a_full_turn():
    assert engagement.teeth_in_cut(4, 2 * pi) == pytest.approx(4)
