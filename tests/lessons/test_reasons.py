"""Reasons that no rule gives: each is a sentence with who says so and what it costs."""

from __future__ import annotations

import pytest

from jobsheet.lessons.reasons import REASONS
from jobsheet.model.remark import SEVERITIES


@pytest.mark.parametrize("name", REASONS)
def test_each_says_why_what_it_costs_and_who_says_so(name):
    reason = REASONS[name]
    assert reason.title[0].isupper()
    assert reason.because.endswith(".")
    assert reason.severity in SEVERITIES
    assert reason.source


def test_no_two_say_the_same():
    assert len({one.title for one in REASONS.values()}) == len(REASONS)
