"""Pressing every fix of a spoilt plan comes to an end, and none of them raises or loses a step that was cut."""

from __future__ import annotations

import random
import re

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.edit.several_steps import DeleteSteps, MoveSteps
from jobsheet.edit.step_commands import MoveSetUp
from jobsheet.errors import QuantityError
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import review
from jobsheet.review.mending.fix_tried import fix_tried
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
        what = chance.choice(("move", "take out", "set-up", "elsewhere", "size", "size"))
        steps = [(set_up, one) for set_up in job.set_ups for one in set_up.operations]
        set_up, step = chance.choice(steps)
        if what == "move":
            job = MoveSteps((step.key,), set_up.key, chance.randrange(len(set_up.operations))).apply(job)
        elif what == "take out":
            job = DeleteSteps((step.key,)).apply(job)
        elif what == "set-up":
            job = MoveSetUp(set_up.key, chance.randrange(len(job.set_ups))).apply(job)
        elif what == "size":
            job = resized(job, step, chance)
        else:
            other = chance.choice(job.set_ups)
            job = MoveSteps((step.key,), other.key, chance.randint(0, len(other.operations))).apply(job)
    return job


def resized(job, step, chance):
    """The job with one length of a step several times as large or small."""
    named = [
        name
        for name in ("depth", "width", "layer", "leave", "cut", "feed_per_tooth", "feed")
        if getattr(getattr(step.fields, name, None), "value", None) is not None
    ]
    if not named:
        return job
    name = chance.choice(named)
    factor = chance.choice((0.1, 0.5, 2, 5))
    found = re.match(r"[\d.]+", getattr(step.fields, name).text)
    text = f"{float(found[0]) * factor:.4g}" if found else ""
    try:
        return SetField(step.key, name, text).apply(job)
    except QuantityError:
        return job  # beyond what the field takes


def pressed(job, chance):
    """The job after its fixes, pressed in any order, and the remarks whose fix it was."""
    reckoner = Reckoner()
    told = []
    for _ in range(ROUNDS):
        reckoned = reckoner.reckon(job)
        found = [one for one in review(job, reckoned) if one.fixes]
        chance.shuffle(found)
        tried = ((one, fix_tried(one, job, reckoned, None)) for one in found)
        one, each = next(((one, each) for one, each in tried if each.offered), (None, None))
        if one is None:
            return job, told
        assert each.job != job, f"{one.rule} does nothing: {one.message}"
        told.append((one.rule, one.operations))
        job = each.job
    return None, told


@pytest.mark.parametrize("seed", range(40))
@pytest.mark.parametrize("sample", SAMPLES)
def test_all_fixes_end(samples, sample, seed):
    chance = random.Random(f"{sample} {seed}")
    job = spoilt(read_job(samples / f"{sample}.yaml"), chance)
    after, told = pressed(job, chance)
    assert after is not None, told[-12:]
    keys = [one.key for _, one in after.operations()]
    assert len(keys) == len(set(keys))
    assert len({one.key for one in after.set_ups}) == len(after.set_ups)
