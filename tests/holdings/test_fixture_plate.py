"""A fixture plate: its screws draw with all of their tension."""

from __future__ import annotations

import pytest

from .grips_said import grip


def test_a_screw_draws_all_of_its_tension():
    """T / (0.2 d): M6 at 6 N·m 5.0 kN; a screw has no arms (plain statics)."""
    assert grip("fixture plate", at="10, 5", screw="M6", tighten="6 N·m").force == pytest.approx(5000)
