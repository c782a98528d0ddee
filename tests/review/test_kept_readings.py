"""Plans with several mistakes at once are read as they were when their readings were looked through."""

from __future__ import annotations

import pytest

from tests.review.kept_readings import plans, reading

PLANS = plans()
#: So many plans are read by one test.
TOGETHER = 10


@pytest.mark.parametrize("first", range(0, len(PLANS), TOGETHER))
def test_a_plan_reads_as_it_was_kept(first):
    for plan in PLANS[first : first + TOGETHER]:
        assert reading(plan) == (plan["says"] or []), plan["edits"]
