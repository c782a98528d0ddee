"""Specific force, and power and torque from it."""

from __future__ import annotations

import pytest

from jobsheet.cutting import kienzle
from jobsheet.cutting.textbook import force_and_power
from jobsheet.errors import CalcError


def test_power_is_removal_times_force():
    assert kienzle.milling_power(2e-3, 6e-3, 1e-3, 2e9) == pytest.approx(
        force_and_power.cutting_power(12e-9, 2e9)
    )


def test_the_motor_gives_more_than_the_cutter_takes():
    assert force_and_power.motor_power(100, 0.8) == pytest.approx(125)
    with pytest.raises(CalcError, match="at most 1"):
        force_and_power.motor_power(100, 1.2)
