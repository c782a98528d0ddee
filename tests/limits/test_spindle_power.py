"""Power of the spindle: the same cut and the same verdict as its torque, in watts and with its own remedy."""

from __future__ import annotations

import math

import pytest

from jobsheet.limits.each import spindle_power, spindle_torque
from jobsheet.machine.spindle import at_speed

from .one_cut import BELTS, around, figures

SPEED = 560 / 60


def both(torque):
    made = figures(torque=torque, power=torque * 2 * math.pi * SPEED, spindle_speed=SPEED)
    return spindle_power.limit(made, around()), spindle_torque.limit(made, around())


@pytest.mark.parametrize("share", [0.3, 0.9, 1.1, 1.5, 2.5])
def test_one_drive_has_one_verdict(share):
    """P = 2 π n M on both sides, so that shares, chances and bands agree."""
    power, torque = both(share * at_speed(BELTS, SPEED).continuous)
    assert power.verdict == torque.verdict
    assert power.chance == pytest.approx(torque.chance)
    assert power.share == pytest.approx(torque.share, rel=1e-6)
    assert (power.low / power.capacity, power.high / power.capacity) == pytest.approx(
        (torque.low / torque.capacity, torque.high / torque.capacity)
    )
    assert power.demand == pytest.approx(2 * math.pi * SPEED * torque.demand)


def test_its_remedy_is_never_a_lower_speed_step():
    power, torque = both(3 * at_speed(BELTS, SPEED).peak)
    assert "lower speed step" in torque.sentence
    assert "lower speed step" not in power.sentence
    assert power.sentence.endswith(spindle_power.WATTS)


def test_none_where_no_power_is_asked():
    assert spindle_power.limit(figures(torque=2.0, spindle_speed=SPEED), around()) is None
    assert spindle_power.limit(figures(power=200.0, spindle_speed=SPEED), around()) is None
    assert spindle_power.limit(figures(torque=2.0, power=200.0), around()) is None
