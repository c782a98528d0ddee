"""Torque of the spindle against what its card says that it holds, and gives
for seconds (design, Verdicts).
"""

from __future__ import annotations

import math

import pytest

from jobsheet.limits.each import spindle_power, spindle_torque

from .one_cut import around, figures


class TestSpindle:
    """B-1 at 560 rpm: continuous 7.60, peak 13.7 N·m (demo scenario section 2)."""

    def limit(self, torque: float):
        return spindle_torque.limit(figures(torque=torque, spindle_speed=560 / 60), around())

    def test_share_is_of_the_continuous_torque(self):
        assert self.limit(3.8).share == pytest.approx(0.5, abs=0.001)

    def test_above_continuous_and_below_peak_is_at_best_tight(self):
        """With the spread of the card alone 8 of 13.7 N·m would be a chance of 6 %: expected."""
        assert self.limit(7.5).verdict == "expected"
        over = self.limit(8.0)
        assert over.chance < 0.10
        assert over.verdict == "tight"
        assert "short cuts only" in over.sentence

    def test_at_the_peak_it_is_tight_and_above_beyond(self):
        at = around()
        peak = 7.596 * 1.8
        assert self.limit(peak * 0.99).verdict == "tight"
        assert self.limit(peak * 1.01).verdict == "beyond"
        assert at.machine.spindle.short_peak == 1.8

    def test_power_is_the_same_evidence(self):
        both = figures(torque=8.0, power=8.0 * 2 * math.pi * 560 / 60, spindle_speed=560 / 60)
        power, torque = spindle_power.limit(both, around()), spindle_torque.limit(both, around())
        assert power.share == pytest.approx(torque.share)
        assert power.verdict == torque.verdict

    def test_nothing_turns_nothing_is_asked(self):
        assert spindle_torque.limit(figures(torque=2.0), around()) is None
        assert spindle_power.limit(figures(), around()) is None
