"""The samples as rules see them: the view, and its steps by their keys."""

from __future__ import annotations

from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.rule import View
from jobsheet.storage.job_file import read_job


def sample(number):
    """The sample of that number."""
    return read_job(next(path for path in sorted(sample_jobs().glob("*.yaml")) if f"-{number}-" in path.name))


def view_of(job):
    reckoned = Reckoner().reckon(job)
    return View(reckoned.job, reckoned)


def steps_of(job):
    """Its steps by key."""
    return {step.key: step for step in plan_of(view_of(job)).steps}
