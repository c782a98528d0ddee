"""Why the steps stand as they do, in a few sentences: each rule once, the worst first chosen, in cutting
order, by the numbers of the plan.
"""

from __future__ import annotations

import re

import pytest

from jobsheet.lessons.needed_order import needed_order
from jobsheet.lessons.order_in_words import MOST, why_words
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job

SAMPLES = (
    "hm-100-drilled-plate-b1",
    "hm-101-setting-block",
    "hm-102-slide-plate",
    "hm-103-pivot-block",
    "hm-104-cover-plate",
)


@pytest.mark.parametrize("name", SAMPLES)
def test_each_sentence_names_two_steps_that_must_stand_so(samples, name):
    needed = needed_order(Reckoner().reckon(read_job(samples / f"{name}.yaml")))
    words = why_words(needed)
    keys = {operation.number: operation.key for _, operation in needed.job.operations()}
    pairs = [(int(first), int(then)) for first, then in re.findall(r"(\d+) before (\d+): ", words)]
    assert 2 <= len(pairs) <= MOST
    assert pairs == sorted(pairs)
    rules = {(one.first, one.then): one.rule for one in needed.pairs}
    named = [rules[keys[first], keys[then]] for first, then in pairs]
    assert len(set(named)) == len(named)


def test_the_reason_is_the_rules_own(samples):
    needed = needed_order(Reckoner().reckon(read_job(samples / "hm-100-drilled-plate-b1.yaml")))
    assert (
        "50 before 60: a long drill walks before it bites, and the hole is then where it should not be."
        in why_words(needed)
    )
