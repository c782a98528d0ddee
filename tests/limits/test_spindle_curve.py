"""The curve of a spindle against a cut: a share of what it holds for long, a
chance by what it gives for seconds.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.limits.spindle_curve import torque_limit
from jobsheet.machine.spindle import at_speed
from jobsheet.model.figure import VERDICTS

from .one_cut import BELTS, around, figures

SPEED = 560 / 60


def asked(torque):
    return torque_limit(figures(torque=torque, spindle_speed=SPEED), around())


@given(st.floats(0.01, 50), st.floats(0.01, 50))
def test_more_torque_is_never_the_milder_word(one, other):
    less, more = sorted((one, other))
    assert VERDICTS.index(asked(less).verdict) <= VERDICTS.index(asked(more).verdict)
    assert asked(less).chance <= asked(more).chance


def test_the_share_is_of_what_is_held_for_long_and_half_stall_at_the_peak():
    at = at_speed(BELTS, SPEED)
    assert asked(at.continuous).share == pytest.approx(1.0)
    assert asked(at.peak).chance == pytest.approx(0.5)
    assert asked(at.peak).share == pytest.approx(at.peak / at.continuous)


def test_nothing_is_said_where_nothing_turns_or_the_machine_has_no_such_speed():
    assert torque_limit(figures(torque=2.0), around()) is None
    assert torque_limit(figures(spindle_speed=SPEED), around()) is None
