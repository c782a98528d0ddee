"""A vice: what it closes with, and where its jaws, bar and parallels stand (holding-and-more-kinds A2)."""

from __future__ import annotations

import pytest

from jobsheet.holdings.all_holdings import holding_kind

from .bodies_placed import only, placed
from .grips_said import grip


def test_vice_of_b1():
    """A2: the vice of B-1, 20 N·m on a screw of 3 mm lead, efficiency 0.18, closes with 7.54 kN."""
    assert grip("vice", tighten="20 N·m").force == pytest.approx(7540, rel=0.002)


def test_soft_jaws_hold_less_than_hard_ones():
    """A1: 0.10; a file of format 1 says that they are reckoned as it was then."""
    plain = grip("vice", tighten="20 N·m")
    assert grip("vice", tighten="20 N·m", jaws="soft").friction == 0.10
    assert grip("vice", tighten="20 N·m", jaws="soft", reckon_as="plain jaws").friction == plain.friction


def test_a_tilting_vice_holds_half():
    """A1: not for heavy cuts (United States Army, OD1644); half the grip is common practice."""
    assert grip("vice", tighten="20 N·m", base="tilting").force == pytest.approx(
        grip("vice", tighten="20 N·m").force / 2
    )


def vice(**facts):
    kind = holding_kind("vice")
    return kind.fields(
        **{entry.name: entry.read(facts[entry.name], "mm") for entry in kind.entries if entry.name in facts}
    )


def test_jaws_stand_where_the_numbers_say():
    """B-1's vice: jaws 80 wide, 25 deep. Work 80 × 50 × 20, 6 above the jaws: the
    jaws reach from 11 below it to 14.
    """
    found = placed(vice(above_jaws="6", rests_on="parallels", parallel_width="6"), fixed_jaw="rear")
    (fixed,), (moving,) = only(found, "fixed jaw"), only(found, "moving jaw")
    assert (fixed.low[2], fixed.high[2]) == pytest.approx((-0.011, 0.014))
    assert fixed.low[1] == pytest.approx(0.050)
    assert moving.high[1] == pytest.approx(0.0)
    assert (fixed.low[0], fixed.high[0]) == pytest.approx((0.0, 0.080))
    parallels = only(found, "parallel")
    assert [(one.low[1], one.high[1]) for one in parallels] == [
        pytest.approx((0.0, 0.006)),
        pytest.approx((0.044, 0.050)),
    ]


def test_what_stands_over_the_end_has_no_jaw_under_it():
    """150 long in jaws of 80: 20 over the left, so the jaws reach from 20 to 100 from its left end."""
    found = placed(vice(above_jaws="6", over_left="20"), size=("150", "50", "20"), fixed_jaw="rear")
    (fixed,) = only(found, "fixed jaw")
    assert (fixed.low[0], fixed.high[0]) == pytest.approx((0.020, 0.100))
    found = placed(vice(above_jaws="6", over_right="20"), size=("150", "50", "20"), fixed_jaw="rear")
    (fixed,) = only(found, "fixed jaw")
    assert (fixed.low[0], fixed.high[0]) == pytest.approx((0.050, 0.130))


def test_a_bar_keeps_the_moving_jaw_off():
    found = placed(vice(above_jaws="6", bar="yes", bar_size="10"), fixed_jaw="rear")
    (moving,), (bar,) = only(found, "moving jaw"), only(found, "bar")
    assert moving.high[1] == pytest.approx(-0.010)
    assert (bar.low[1], bar.high[1]) == pytest.approx((-0.010, 0.0))


def test_the_fixed_jaw_can_be_at_an_end():
    found = placed(vice(above_jaws="6"), fixed_jaw="left")
    (fixed,) = only(found, "fixed jaw")
    assert fixed.high[0] == pytest.approx(0.0)
    assert fixed.high[1] - fixed.low[1] == pytest.approx(0.080)


def test_parallels_taken_out_are_gone():
    assert not only(
        placed(vice(above_jaws="6", rests_on="parallels", parallels_then="taken out")), "parallel"
    )
