"""Plans that are spoilt in one thing: what is offered mends them, and what would
only end the complaint is not offered.
"""

from __future__ import annotations

import random

import pytest

from jobsheet.review.mending.fix_tried import fix_tried
from jobsheet.review.mending.fix_words import by_hand, refusal
from jobsheet.storage.job_file import read_job
from tests.review.judging import judged, spoilt_plans, wrong
from tests.review.test_rules import edited

PLANS = spoilt_plans()
#: So many are tried in the plain suite, all of them with --long.
SHORT = 8


def cases():
    short = random.Random("spoilt").sample(range(len(PLANS)), SHORT)
    for index, plan in enumerate(PLANS):
        marks = () if index in short or plan["fix"] == "no" else pytest.mark.long
        yield pytest.param(plan, id=plan["about"], marks=marks)


def spoil(samples, plan):
    return edited(read_job(samples / f"{plan['job']}.yaml"), [tuple(one) for one in plan["edits"]])


@pytest.mark.parametrize("plan", list(cases()))
def test_what_is_offered_mends(samples, plan):
    before = judged(spoil(samples, plan))
    found = [one for one in before.remarks if one.rule == plan["rule"]]
    assert found, "the rule says nothing"
    for remark in before.remarks:
        tried = fix_tried(remark, before.job, before.reckoned, before.facts)
        if tried is not None and tried.offered:
            assert not wrong(before, judged(tried.job), remark), (remark.rule, tried.fix.label)
    tried = fix_tried(found[0], before.job, before.reckoned, before.facts)
    assert (tried is not None and tried.offered) == (plan["fix"] == "yes")
    if plan["fix"] == "no":  # it says what a person could do
        assert by_hand(found[0])
        assert tried is None or "By hand: " in refusal(found[0], tried)
