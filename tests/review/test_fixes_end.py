"""Pressing every fix that is offered comes to an end, and each ends in a better plan: no new remark, no worse limit, the same part."""

from __future__ import annotations

import random
import re

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.edit.several_steps import DeleteSteps, MoveSteps
from jobsheet.edit.step_commands import MoveSetUp
from jobsheet.errors import QuantityError
from jobsheet.review.mending.fix_tried import fix_tried
from jobsheet.storage.job_file import read_job
from tests.review.judging import judged, wrong
from tests.review.test_rules import CASES, cases, edited

SAMPLES = (
    "hm-100-drilled-plate-b1", "hm-100-drilled-plate-b2", "hm-101-setting-block", "hm-102-slide-plate", "hm-103-pivot-block",
    "hm-104-cover-plate",
)  # fmt: skip
#: So many fixes are pressed at most: a spoilt plan of twenty steps has some ten remarks.
ROUNDS = 60
#: So many spoilt plans of each sample are tried with --long.
SEEDS = 40
MACHINES = ("bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2")


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


def elsewhere(job, chance):
    """The job on any of the three machines, in either system of units."""
    job = SetField("job", "machine", chance.choice(MACHINES)).apply(job)
    return SetField("job", "units", chance.choice(("mm", "in"))).apply(job)


def pressed(job, chance):
    """The plans as the fixes that are offered are pressed in any order, until none is left; each with the remark that it ended."""
    now, told = judged(job), []
    for _ in range(ROUNDS):
        found = [one for one in now.remarks if one.fixes]
        chance.shuffle(found)
        tried = ((one, fix_tried(one, now.job, now.reckoned, now.facts)) for one in found)
        remark, offer = next(((one, each) for one, each in tried if each.offered), (None, None))
        if remark is None:
            return told
        after = judged(offer.job)
        said = (remark.rule, remark.operations, offer.fix.label)
        assert offer.job != now.job, said
        assert not wrong(now, after, remark), (said, wrong(now, after, remark))
        told.append(said)
        now = after
    raise AssertionError(told[-12:])


def planted():
    """Every case of the rules that has a mistake and no invented facts."""
    return [
        pytest.param(one.values[1], id=one.id)
        for one in cases()
        if one.values[1]["remark"] != "none" and "facts" not in one.values[1]
    ]


@pytest.mark.parametrize("seed", range(4))
def test_some_fixes_end_in_a_better_plan(samples, seed):
    chance = random.Random(f"short {seed}")
    job = spoilt(elsewhere(read_job(samples / f"{chance.choice(SAMPLES)}.yaml"), chance), chance)
    pressed(job, chance)


@pytest.mark.long
@pytest.mark.parametrize("seed", range(SEEDS))
@pytest.mark.parametrize("sample", SAMPLES)
def test_all_fixes_end_in_a_better_plan(samples, sample, seed):
    chance = random.Random(f"{sample} {seed}")
    job = read_job(samples / f"{sample}.yaml")
    if seed % 2:  # as it is planned, and anywhere else
        job = elsewhere(job, chance)
    pressed(spoilt(job, chance), chance)


@pytest.mark.long
@pytest.mark.parametrize("case", planted())
def test_fixes_of_planted_mistakes_end_in_a_better_plan(samples, hm100, case):
    start = hm100
    if "job" in case:
        own = CASES.parent / "jobs" / f"{case['job']}.yaml"
        start = read_job(own if own.exists() else samples / own.name)
    pressed(edited(start, [tuple(one) for one in case["edits"]]), random.Random(str(case)))
