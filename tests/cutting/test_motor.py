"""What a motor gives through belts and gears: its power at every speed, less what is lost."""

from __future__ import annotations

import pytest
from hypothesis import given

from jobsheet.cutting.kienzle import power_from_torque
from jobsheet.cutting.motor import constant_power_torque
from jobsheet.errors import CalcError

from .drawn_sizes import speeds


@given(speeds)
def test_belts_keep_the_power(speed):
    assert power_from_torque(constant_power_torque(550, 0.81, speed), speed) == pytest.approx(550 * 0.81)


@pytest.mark.parametrize("efficiency", [0, -0.1, 1.1, float("nan")])
def test_refuses_an_efficiency_that_is_no_share(efficiency):
    with pytest.raises(CalcError, match="efficiency"):
        constant_power_torque(550, efficiency, 5)
