"""Round and six-sided stock in vees and chucks: bodies round its own axis, a
diameter that is not asked twice.
"""

from __future__ import annotations

import pytest

from jobsheet.holdings.placed import bar_of
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages.course import course_of
from jobsheet.stock.lying_stock import silhouette

from .round_stock import BAR, CHUCK, HEXAGON, VEE, job_of, lie_of


def test_a_bar_knows_which_of_its_faces_are_round():
    lie = lie_of(job_of(BAR, VEE))
    assert lie.bar == 0
    assert [face for face in ("left", "right", "front", "rear", "top", "bottom") if lie.is_curved(face)] == [
        "front", "rear", "top", "bottom",
    ]  # fmt: skip
    assert not lie_of(job_of(HEXAGON, CHUCK)).is_curved("top")
    assert lie_of(job_of("length: 90; width: 40; height: 40", CHUCK)).bar is None


def test_the_axis_stays_where_it_was_when_a_flat_is_cut():
    job = job_of(BAR, VEE)
    reckoned = Reckoner().reckon(job)
    after = course_of(reckoned.job, reckoned.settings).cuts[0].after
    assert after.size[2] == pytest.approx(0.034)
    assert bar_of(after).middle == pytest.approx((0.045, 0.02, 0.02))
    outline = silhouette(after, 1, 2)[0]
    flat = [x for x, z in outline if z == pytest.approx(0.034)]
    # A chord 6 below the top of a circle of 40: 2 √(20² - 14²) = 28.57; its
    # lines lie up to 0.01 inside the circle.
    assert max(flat) - min(flat) == pytest.approx(0.02857, abs=3e-5)
