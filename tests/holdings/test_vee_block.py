"""Vee blocks: how high round work stands in them."""

from __future__ import annotations

import pytest

from jobsheet.holdings.kinds import vee_block


def test_round_work_in_a_vee():
    """A2: Ø30 in a 90° vee under 8 kN: 0.12 × 8000 × 0.015 × 2.414 = 34.8 N·m;
    its centre 21.2 over the point.
    """
    assert vee_block.twisting_grip(8000, 0.015, 0.12) == pytest.approx(34.8, abs=0.05)
    assert vee_block.centre_height(0.015) * 1e3 == pytest.approx(21.2, abs=0.05)
