"""Bodies of holdings round the work as it lies."""

from __future__ import annotations

import math

import pytest

from jobsheet.holdings.placed import bodies_of

from .round_stock import BAR, CHUCK, HEXAGON, VEE, job_of, lie_of


def test_the_point_of_a_vee_lies_under_the_axis_of_its_bar():
    """The axis lies R / sin(α / 2) over the point (holding-and-more-kinds A1):
    28.28 mm for 40 in a vee of 90°.
    """
    job = job_of(BAR, VEE)
    vees = [body for body in bodies_of(job.set_ups[0], lie_of(job), None) if body.part == "vee"]
    assert len(vees) == 2
    middle, point, half = vees[0].vee
    assert (middle, point, half) == pytest.approx((0.02, 0.02 - 0.02 * math.sqrt(2), math.pi / 4))
    assert vees[0].high[2] < 0.02  # below the axis, so that a strap finds the bar


def test_a_chuck_is_round_about_the_axis():
    job = job_of(HEXAGON, CHUCK)
    chuck = bodies_of(job.set_ups[0], lie_of(job), None)[0]
    assert chuck.size[1] == pytest.approx(chuck.size[2])
    assert (chuck.low[2] + chuck.high[2]) / 2 == pytest.approx(0.018)
