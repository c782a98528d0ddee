"""A hand vice holds what a hand at its end holds."""

from __future__ import annotations

import pytest

from jobsheet.holdings.kinds import hand_vice

from .said_holdings import said


def test_a_hand_at_the_end_of_its_vice():
    """A1: 120 mm × 30 N = 3.6 N·m."""
    assert hand_vice.moment(said("hand vice")) == pytest.approx(3.6)
    assert hand_vice.moment(said("hand vice", arm="240")) == pytest.approx(7.2)
