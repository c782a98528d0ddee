"""A hole drilled before a step as a mend: with the texts that are given, right
before it, its feed left to the adviser.
"""

from __future__ import annotations

import pytest

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.mending.added_hole import drilled_before, spotted_before
from jobsheet.review.mending.fixes import NotMended

from .views_read import sample


def test_a_pilot_stands_right_before_its_drill():
    job = sample(100)
    setting = Reckoner().reckon(job).settings["drill"]
    texts = {"cutter": "drill 2.5 mm", "at": job.find("drill")[1].fields.at.text, "depth": "through"}
    mended = drilled_before(job.find("drill")[1], setting, texts)(job)
    keys = [operation.key for _, operation in mended.operations()]
    (new,) = set(keys) - {operation.key for _, operation in job.operations()}
    assert keys.index(new) == keys.index("drill") - 1
    step = mended.find(new)[1]
    assert step.fields.cutter.diameter == pytest.approx(2.5e-3)
    assert step.fields.feed is None


def test_a_drill_that_would_not_live_through_its_depth_is_not_offered():
    job = sample(100)
    setting = Reckoner().reckon(job).settings["drill"]
    with pytest.raises(NotMended):
        drilled_before(
            job.find("drill")[1], setting, {"cutter": "drill 0.5 mm", "at": "10, 10", "depth": "11 mm"}
        )(job)


def test_a_spot_comes_no_wider_than_its_drill():
    job = sample(100)
    mend, wide = spotted_before(job, "drill", job.find("drill")[1].fields.at.text, 5e-3)
    assert wide <= 5e-3
    assert len(mend(job).operations()) == len(job.operations()) + 1
