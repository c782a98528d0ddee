"""Plans with several mistakes at once, and single rules at their thresholds, read as they did when their readings were looked through."""

from __future__ import annotations

import pytest

from tests.review.kept_readings import plans, reading
from tests.review.kept_rule_readings import questions, said

PLANS = plans()
#: So many plans are read by one test.
TOGETHER = 10


@pytest.mark.parametrize("first", range(0, len(PLANS), TOGETHER))
def test_a_plan_reads_as_it_was_kept(first):
    for plan in PLANS[first : first + TOGETHER]:
        assert reading(plan) == (plan["says"] or []), plan["edits"]


@pytest.mark.parametrize("asked", questions())
def test_a_rule_says_what_it_was_kept_to_say(asked):
    for plan in questions()[asked]:
        assert said(asked, plan) == (plan["says"] or []), (plan["job"], plan["edits"])
