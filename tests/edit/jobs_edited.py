"""The jobs that the tests of editing begin with, and what they ask of one."""

from __future__ import annotations

from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job

JOB = read_job(sample_jobs() / "hm-103-pivot-block.yaml")


PLATE = read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")


def keys(job):
    return [operation.key for _, operation in job.operations()]


def numbers(job):
    return [operation.number for _, operation in job.operations()]


def whole(job):
    """It is a job that can be saved and read."""
    assert job_from_text(write_job(job), "x") == job
    assert len(set(keys(job))) == len(keys(job))
    assert len(set(numbers(job))) == len(numbers(job))
    return job


def done(command, job=PLATE):
    return whole(command.apply(job))
