"""Every sample in turn, read."""

from __future__ import annotations

import pytest

from jobsheet.storage.job_file import read_job

from .samples_printed import SAMPLES


@pytest.fixture(params=SAMPLES)
def sample(request, samples):
    return read_job(samples / f"{request.param}.yaml")
