"""How much a cut takes off stock that is no box."""

from __future__ import annotations

import math

import pytest

from jobsheet.model.profile import Profile
from jobsheet.stock.lying_stock import profile_of
from tests.stock.shaped_jobs import shaped


def test_the_end_of_a_tube_is_a_ring():
    job = shaped("tube", "height")
    found = profile_of(job.stock, job.set_ups[0], 0.0)
    wall = job.stock.wall.value
    assert found.layer(1e-3) == pytest.approx(math.pi * (0.02**2 - (0.02 - wall) ** 2) * 1e-3)
    assert found.width(1e-3) is None
    assert Profile(area=1.0).gone == 0.0
