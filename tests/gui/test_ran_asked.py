"""What a set-up asks of who cut it: the steps that cut, the sizes with a
limit, and by how much one is out.
"""

from __future__ import annotations

import pytest

from jobsheet.gui.desk.saved_plan import SavedPlan
from jobsheet.gui.places.ran.ran_asked import SizeAsked, StepAsked, asked_of
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job

MM = 1e-3
SIZE = SizeAsked(key="k", number=10, size="width", low=9.95 * MM, high=10.05 * MM, words="9.95 to 10.05")


@pytest.mark.parametrize(
    ("found", "units", "said"),
    [
        (10.07, "mm", "0.02 over"),
        (9.9, "mm", "0.05 under"),
        (10.0, "mm", ""),
        (9.95, "mm", ""),
        (10.05, "mm", ""),
        (11.05, "mm", "1 over"),
        (10.05 + 25.4, "in", "1 over"),
        (10.05 + 0.254, "in", "0.01 over"),
    ],
)
def test_it_is_out_by_so_much_and_its_limits_are_still_good(found, units, said):
    assert SIZE.out_by(found * MM, units) == said


def test_what_was_planned_is_said_in_one_line():
    step = StepAsked(
        key="k", number=10, icon="", words="", named="", spindle="300 rpm", depth="3 × 4 mm", layers=3
    )
    assert step.planned == "300 rpm · 3 × 4 mm deep"
    assert step.one_deep == "4 mm"
    assert StepAsked(key="k", number=10, icon="", words="", named="").planned == ""


def _plan(name):
    path = sample_jobs() / f"{name}.yaml"
    job = read_job(path)
    return SavedPlan(path=path, job=job, reckoned=Reckoner().reckon(job), code="")


def test_every_set_up_of_a_job_asks_for_its_own_steps():
    plan = _plan("hm-103-pivot-block")
    for set_up in plan.job.set_ups:
        asked = asked_of(plan, set_up)
        keys = [one.key for one in set_up.operations]
        assert [one.key for one in asked.steps] == [
            key for key in keys if key in {one.key for one in asked.steps}
        ]
        assert {one.key for one in asked.sizes} <= set(keys)
        assert asked.numbers == (set_up.number,)
        assert asked.to_cut >= 1
        assert all(one.layers >= 1 and one.words for one in asked.steps)
        assert all(one.low < one.high for one in asked.sizes)


def test_what_is_said_of_a_job_with_one_set_up_is_said_of_that():
    plan = _plan("hm-104-cover-plate")
    assert asked_of(plan, plan.job.set_ups[0]).numbers == (1, 0)
