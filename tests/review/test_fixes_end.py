"""Pressing every fix that is offered comes to an end, and each ends in a better plan: no new
remark, no worse limit, the same part.
"""

from __future__ import annotations

import random

import pytest

from jobsheet.review.mending.fix_tried import fix_tried
from jobsheet.storage.job_file import read_job
from tests.review.judging import judged, wrong
from tests.review.spoiling import elsewhere, spoilt, upset
from tests.review.test_rules import CASES, cases, edited

SAMPLES = (
    "hm-100-drilled-plate-b1", "hm-100-drilled-plate-b2", "hm-101-setting-block", "hm-102-slide-plate", "hm-103-pivot-block",
    "hm-104-cover-plate",
)  # fmt: skip
#: So many fixes are pressed at most: a spoilt plan of twenty steps has some ten remarks.
ROUNDS = 60
#: So many spoilt plans of each sample are tried with --long.
SEEDS = 40


def pressed(job, chance):
    """The plans as the fixes that are offered are pressed in any order, until none is left;
    each with the remark that it ended.
    """
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


@pytest.mark.parametrize("seed", [0, 7, 11, 13])
def test_some_fixes_end_in_a_better_plan(samples, seed):
    chance = random.Random(f"short {seed}")
    spoil = chance.choice((spoilt, upset))
    job = spoil(elsewhere(read_job(samples / f"{chance.choice(SAMPLES)}.yaml"), chance), chance)
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
@pytest.mark.parametrize("seed", range(SEEDS))
@pytest.mark.parametrize("sample", SAMPLES)
def test_all_fixes_of_upset_plans_end_in_a_better_plan(samples, sample, seed):
    chance = random.Random(f"upset {sample} {seed}")
    pressed(upset(elsewhere(read_job(samples / f"{sample}.yaml"), chance), chance), chance)


@pytest.mark.long
@pytest.mark.parametrize("case", planted())
def test_fixes_of_planted_mistakes_end_in_a_better_plan(samples, hm100, case):
    start = hm100
    if "job" in case:
        own = CASES.parent / "jobs" / f"{case['job']}.yaml"
        start = read_job(own if own.exists() else samples / own.name)
    pressed(edited(start, [tuple(one) for one in case["edits"]]), random.Random(str(case)))
