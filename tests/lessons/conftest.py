"""The plan that most exercises are made from, reckoned."""

from __future__ import annotations

import pytest

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


@pytest.fixture
def pivot(samples):
    return Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml"))
