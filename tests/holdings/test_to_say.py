"""What should still be said of a holding."""

from __future__ import annotations

import pytest

from jobsheet.holdings.to_say import to_say
from jobsheet.reckoning.reckoner import Reckoner

from .round_stock import BAR, CHUCK, HEXAGON, VEE, job_of


@pytest.mark.parametrize(("stock", "across"), [(BAR, 40e-3), (HEXAGON, 36e-3)])
def test_the_diameter_is_that_of_the_stock(stock, across):
    told = Reckoner().reckon(job_of(stock, f"{CHUCK}; diameter: {across * 1e3:g}")).settings["flat"].grip
    found = Reckoner().reckon(job_of(stock, CHUCK)).settings["flat"].grip
    assert found == told
    assert found.radius == pytest.approx(across / 2)
    job = job_of(stock, VEE)
    assert "diameter of the work" not in to_say(job.set_ups[0], job.stock)
    block = job_of("length: 90; width: 40; height: 40", VEE)
    assert "diameter of the work" in to_say(block.set_ups[0], block.stock)
