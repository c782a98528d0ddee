"""What both kinds of tapping share: usual wrenches, the torque in a hole, two hands on a wrench."""

from __future__ import annotations

import pytest

from jobsheet.catalog.tools.threads import read_thread
from jobsheet.errors import CalcError
from jobsheet.model.quantity import Quantity
from jobsheet.operations.shared.tally import Tally
from jobsheet.operations.shared.thread_work import thread_torque, wrench, wrench_length
from tests.limits.one_cut import around


def test_a_typed_wrench_stands_and_a_larger_thread_has_a_longer_one():
    assert wrench_length(read_thread("M6"), Quantity(0.25, "250")) == 0.25
    lengths = [wrench_length(read_thread(name), None) for name in ("M3", "M6", "M8", "M12", "M16")]
    assert lengths == sorted(lengths)
    assert wrench_length(read_thread("M24"), None) is None


def torque(hole, thread="M6", styles=("plug",), condition="sharp and oiled", metal="S235"):
    return thread_torque(Tally("mm"), around(metal=metal), read_thread(thread), hole, styles, condition)


def test_the_heaviest_tap_of_a_set_counts():
    assert torque(5e-3, styles=("taper", "plug")) == pytest.approx(
        max(torque(5e-3, styles=(one,)) for one in ("taper", "plug"))
    )


def test_a_hole_that_leaves_no_thread_is_refused():
    with pytest.raises(CalcError, match="smaller than the thread"):
        torque(6e-3)


def test_two_hands_give_force_times_the_whole_length():
    """Two hands of 30 N on 180 mm: 30 × 0.18 = 5.4 N·m; 60 N strong, 10.8."""
    tally = Tally("mm")
    wrench(tally, around(), 0.18, 6.0)
    done = tally.done()
    assert (done.value("wrench_easy"), done.value("wrench_strong")) == pytest.approx((5.4, 10.8))
    assert done.caveats == ()
    wrench(tally, around(), 0.18, 12.0)
    assert "larger hole or take a longer wrench" in tally.done().caveats[0]
