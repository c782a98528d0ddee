"""What is said of a plan of one's own."""

from __future__ import annotations

import pytest

from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.lessons.own_plan import own_plan_marked
from jobsheet.lessons.own_plan_words import own_plan_lines
from jobsheet.storage.job_file import read_job

from .samples_taught import SAMPLES


@pytest.mark.parametrize("name", SAMPLES)
def test_the_plans_of_the_samples_are_right(samples, name):
    job = read_job(samples / f"{name}.yaml")
    found = own_plan_marked(job, job)
    assert found.right, own_plan_lines(job, found)
    assert found.good


def test_a_hole_that_is_left_out_is_said_by_its_feature(samples):
    job = read_job(samples / "hm-103-pivot-block.yaml")
    ream = next(step.key for _, step in job.operations() if step.number == 145)
    answer = DeleteSteps((ream,)).apply(job)
    found = own_plan_marked(job, answer)
    assert not found.right
    assert "16 H7" in " ".join(own_plan_lines(answer, found))
