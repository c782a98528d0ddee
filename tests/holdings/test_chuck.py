"""A chuck holds round work by friction."""

from __future__ import annotations

import pytest

from .grips_said import grip, turned_by


def test_a_chuck_holds_round_work_by_friction():
    """A1: SF Ft r against the chuck; 12 kN at all jaws on Ø20, 0.12: 14.4 N·m. 2.5 × 500 N × 10 mm = 12.5,
    and lying along a lift is held by the jaws themselves.
    """
    held = grip("chuck", on="dividing head", diameter="20", jaw_force="12 kN")
    found = turned_by(held, 500)
    assert found.capacity == pytest.approx(14.4)
    assert found.demand == pytest.approx(12.5)
    assert turned_by(held, 600).verdict == "beyond"  # 15.0
