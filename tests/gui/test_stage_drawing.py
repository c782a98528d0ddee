"""One stage of the work as a drawing: small ones without sizes, and where features lie on the large one."""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import Text
from jobsheet.gui.desk.stage_drawing import LARGE, SMALL, lie_of, picture_of, spots_of
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.stage_view import stages_of
from jobsheet.storage.job_file import read_job


@pytest.fixture(scope="module")
def stages():
    reckoned = Reckoner().reckon(read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml"))
    return stages_of(reckoned.job, reckoned.settings)


def _of(stages, key):
    return next(stage for stage in stages if stage.cut is not None and stage.cut.key == key)


def test_the_stock_is_held_by_no_cut(stages):
    assert lie_of(stages[0]) is None
    assert lie_of(_of(stages, "drill")) is not None
    assert picture_of(stages[0], None, large=False, units="mm", now=False).items


def test_only_the_large_one_of_now_has_its_sizes(stages):
    stage = _of(stages, "face-rough")
    large = picture_of(stage, stage.cut, large=True, units="mm", now=True)
    before = picture_of(stage, stage.cut, large=True, units="mm", now=False)
    small = picture_of(stage, stage.cut, large=False, units="mm", now=True)
    assert (large.width, large.height) == LARGE
    assert (small.width, small.height) == SMALL
    assert any(isinstance(item, Text) for item in large.items)
    assert not any(isinstance(item, Text) for item in before.items)
    assert not any(isinstance(item, Text) for item in small.items)


def test_the_four_holes_of_a_step_lie_on_its_drawing(stages):
    spots = spots_of(stages, _of(stages, "drill").cut)
    assert len(spots) >= 4
    for x, y, radius, words in spots:
        assert -radius <= x <= LARGE[0] + radius
        assert -radius <= y <= LARGE[1] + radius
        assert words
