"""A stock of every shape, and cuts off its sides."""

from __future__ import annotations

import math
import random

import pytest

from jobsheet.model.lying import beside
from jobsheet.model.stock import ALONG, BARS, FACES, SAGITTA, sides_of
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages.course import course_of
from jobsheet.stages.solids import Modeller
from tests.stock.shaped_jobs import SHAPES, side_cut


@pytest.mark.parametrize("radius", [2e-3, 10e-3, 40e-3, 150e-3])
def test_no_line_of_a_circle_lies_further_inside_than_solids_may_differ(radius):
    assert radius * (1 - math.cos(math.pi / sides_of(radius))) <= SAGITTA
    assert sides_of(radius) % 4 == 0


#: Every way a piece can lie, and every side of it: a sample by seed in the normal run.
WAYS = [(name, along, up, operator, side)
        for name in SHAPES
        for along in (ALONG if name in BARS else ("",))
        for up in FACES for operator in beside(up)
        for side in ("left", "right", "front", "rear")]  # fmt: skip


def test_a_cut_off_a_side_takes_what_the_solid_loses(request):
    ways = WAYS if request.config.getoption("--long") else random.Random(16).sample(WAYS, 60)
    for way in ways:
        for kind in ("side-mill", "saw-cut"):
            job = side_cut(way, kind)
            reckoned = Reckoner().reckon(job)
            figure = reckoned.operations["cut"].figures.value("volume")
            removed = Modeller().stages(course_of(job, reckoned.settings))[1].removed
            assert figure == pytest.approx(removed, rel=0.02, abs=1e-9), (way, kind)
