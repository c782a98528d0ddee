"""The review of some forty operations from nothing, the best of five rounds."""

import time

from msgspec.structs import replace

from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import review
from jobsheet.storage.job_file import read_job


def test_forty_operations_are_reviewed(capsys):
    jobs = [read_job(sample_jobs() / f"{name}.yaml") for name in ("hm-103-pivot-block", "hm-104-cover-plate")]
    assert sum(len(job.operations()) for job in jobs) >= 40
    reviewed = [(job, Reckoner().reckon(job)) for job in jobs]
    best = 1.0
    for _ in range(5):
        fresh = [(job, replace(reckoned)) for job, reckoned in reviewed]
        begin = time.perf_counter()
        for job, reckoned in fresh:
            review(job, reckoned)
        best = min(best, time.perf_counter() - begin)
    with capsys.disabled():
        print(f"\nreview of 40 operations: {best * 1e3:.0f} ms (limit 50 ms)")
    assert best < 0.05
