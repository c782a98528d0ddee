"""The feed that a torque drives a drill at: the drilling law turned round."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.cutting.drill_forces import drill_torque
from jobsheet.cutting.textbook.quill_torque import feed_from_torque
from jobsheet.errors import CalcError


@given(st.floats(0.02e-3, 0.4e-3), st.floats(2e-3, 25e-3), st.floats(0.03, 0.4), st.floats(1, 1.5))
def test_the_torque_of_a_feed_gives_that_feed_back(feed, diameter, ratio, wear):
    torque = drill_torque(20000, feed, diameter, chisel_ratio=ratio, wear=wear)
    assert feed_from_torque(torque, 20000, diameter, ratio, wear) == pytest.approx(feed, rel=1e-9)


def test_a_sixteenth_part_more_torque_gives_more_feed_than_that():
    """Torque goes with the feed to 0.8, so feed with the torque to 1.25."""
    assert feed_from_torque(2.0, 20000, 8e-3) / feed_from_torque(1.0, 20000, 8e-3) == pytest.approx(2**1.25)


@pytest.mark.parametrize(
    "change", [{"torque": 0}, {"kd": -1}, {"diameter": 0}, {"wear": 0}, {"chisel_ratio": 1}]
)
def test_refuses_what_has_no_meaning(change):
    with pytest.raises(CalcError):
        feed_from_torque(**{"torque": 2.0, "kd": 20000, "diameter": 8e-3, **change})
