"""Torque of a motor under a frequency drive."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting.kienzle import power_from_torque
from jobsheet.cutting.motor import constant_power_torque
from jobsheet.cutting.textbook.motor_torque import capped_torque, constant_torque, peak_torque

from .drawn_sizes import speeds


@given(speeds, speeds)
def test_electronics_keep_the_torque_below_base_and_the_power_above(speed, base):
    torque = constant_torque(500, 0.8, base, speed)
    if speed <= base:
        assert torque == pytest.approx(constant_power_torque(500, 0.8, base))
    else:
        assert power_from_torque(torque, speed) == pytest.approx(400)


@given(st.floats(0.1, 100), st.floats(0.1, 100))
def test_a_cap_holds_and_never_adds(torque, cap):
    assert capped_torque(torque, cap) <= min(torque, cap)


def test_overload_multiplies():
    assert peak_torque(10, 1.8) == 18
