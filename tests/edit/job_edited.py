"""The job that the tests of single edits begin with."""

from __future__ import annotations

from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job

JOB = read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")


def numbers(job):
    return [operation.number for _, operation in job.operations()]
