"""Pressing every fix of a spoilt plan comes to an end, and none of them raises or loses a step that was cut."""

from __future__ import annotations

import random

import pytest

from jobsheet.edit.commands import DeleteOperation, MoveOperation, MoveSetUp
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import review
from jobsheet.storage.job_file import read_job

SAMPLES = (
    "hm-100-drilled-plate-b1", "hm-100-drilled-plate-b2", "hm-101-setting-block", "hm-102-slide-plate", "hm-103-pivot-block",
    "hm-104-cover-plate",
)  # fmt: skip
#: So many fixes are pressed at most: a spoilt plan of twenty steps has some ten remarks.
ROUNDS = 60


def spoilt(job, chance):
    """The job with one to four steps or set-ups moved or taken out."""
    for _ in range(chance.randint(1, 4)):
        what = chance.choice(("move", "take out", "set-up", "elsewhere"))
        steps = [(set_up, one) for set_up in job.set_ups for one in set_up.operations]
        set_up, step = chance.choice(steps)
        if what == "move":
            job = MoveOperation(step.key, set_up.key, chance.randrange(len(set_up.operations))).apply(job)
        elif what == "take out":
            job = DeleteOperation(step.key).apply(job)
        elif what == "set-up":
            job = MoveSetUp(set_up.key, chance.randrange(len(job.set_ups))).apply(job)
        else:
            other = chance.choice(job.set_ups)
            job = MoveOperation(step.key, other.key, chance.randint(0, len(other.operations))).apply(job)
    return job


def pressed(job):
    """The job after its fixes, and the remarks whose fix was pressed, in their order."""
    reckoner = Reckoner()
    told = []
    for _ in range(ROUNDS):
        fixable = [one for one in review(job, reckoner.reckon(job)) if one.fix is not None]
        if not fixable:
            return job, told
        after = fixable[0].fix.mend(job)
        assert after != job, f"{fixable[0].rule} does nothing: {fixable[0].message}"
        told.append((fixable[0].rule, fixable[0].operations))
        job = after
    return None, told


@pytest.mark.parametrize("seed", range(40))
@pytest.mark.parametrize("sample", SAMPLES)
def test_all_fixes_end(samples, sample, seed):
    job = spoilt(read_job(samples / f"{sample}.yaml"), random.Random(f"{sample} {seed}"))
    after, told = pressed(job)
    assert after is not None, told[-12:]
    keys = [one.key for _, one in after.operations()]
    assert len(keys) == len(set(keys))
    assert len({one.key for one in after.set_ups}) == len(after.set_ups)
