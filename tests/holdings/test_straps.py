"""Straps: what their bolts press with, and where they come from (holding-and-more-kinds A2)."""

from __future__ import annotations

import pytest

from .bodies_placed import only, placed, straps
from .grips_said import grip


@pytest.mark.parametrize(("heel", "nose", "force"), [("40", "40", 8.3e3), ("40", "80", 5.6e3)])
def test_strap_by_its_arms(heel, nose, force):
    """A2: M12 at 40 N·m draws 16.7 kN; a = b puts 8.3 on the work, b = 2a 5.6."""
    one = grip("straps", at="10, 5", bolt="M12", tighten="40 N·m", heel_to_bolt=heel, bolt_to_nose=nose)
    assert one.force == pytest.approx(force, rel=0.01)


def test_four_straps_hold_four_times_one():
    one = grip("straps", clamps="1", bolt="M12", tighten="40 N·m")
    four = grip("straps", at="10, 5; 70, 5; 10, 45; 70, 45", bolt="M12", tighten="40 N·m")
    assert four.force == pytest.approx(4 * one.force)
    assert "4 straps" in four.working


def test_a_strap_comes_from_the_edge_nearest_to_its_nose():
    """Nose at 40, 5: from the front; bolt 30 before the nose, heel 40 further, 14 thick on work 20 high."""
    found = placed(
        straps(
            at="40, 5", bolt="M12", bolt_to_nose="30", heel_to_bolt="40", strap_width="30", strap_thickness="14",
            stud_above="25", rests_on="table",
        )
    )  # fmt: skip
    (strap,), (stud,) = only(found, "strap"), only(found, "stud")
    assert (strap.low[0], strap.high[0]) == pytest.approx((0.025, 0.055))
    assert strap.low[1] == pytest.approx(0.005 - 0.070)
    assert (strap.low[2], strap.high[2]) == pytest.approx((0.020, 0.034))
    assert stud.high[2] == pytest.approx(0.059)
    assert (stud.low[1] + stud.high[1]) / 2 == pytest.approx(0.005 - 0.030)
    assert strap.sure
