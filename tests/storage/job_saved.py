"""The job that is written and read back."""

from __future__ import annotations

from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job

JOB = read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
