"""A hole smaller than the chisel edge: straight between a drill in solid metal
and one whose chisel hangs free.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting.chisel_relief import relieved_thrust, relieved_torque
from jobsheet.errors import CalcError


@pytest.mark.parametrize("relieved", [relieved_torque, relieved_thrust])
def test_it_meets_both_ends_and_half_way_is_their_mean(relieved):
    assert relieved(12.8, 11.0, 0.0, 2e-3) == 12.8
    assert relieved(12.8, 11.0, 2e-3, 2e-3) == pytest.approx(11.0)
    assert relieved(12.8, 11.0, 1e-3, 2e-3) == pytest.approx((12.8 + 11.0) / 2)


@given(st.floats(0, 1), st.floats(0, 1))
def test_a_wider_hole_never_asks_more(one, other):
    narrow, wide = sorted((one, other))
    assert relieved_thrust(3500, 1560, wide * 2e-3, 2e-3) <= relieved_thrust(3500, 1560, narrow * 2e-3, 2e-3)


@pytest.mark.parametrize(
    "values", [(0, 11, 1e-3, 2e-3), (12, 0, 1e-3, 2e-3), (12, 11, -1e-6, 2e-3), (12, 11, 2.1e-3, 2e-3), (12, 11, 0, 0)]
)  # fmt: skip
def test_refuses_what_has_no_meaning(values):
    for relieved in (relieved_torque, relieved_thrust):
        with pytest.raises(CalcError):
            relieved(*values)
