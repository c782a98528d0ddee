"""Cuts on all cards and metals are answered as they were when their readings were looked through."""

from __future__ import annotations

import pytest

from tests.reckoning.kept_readings import questions, reading

QUESTIONS = questions()
#: So many questions are asked by one test.
TOGETHER = 8
PARTS = [QUESTIONS[first : first + TOGETHER] for first in range(0, len(QUESTIONS), TOGETHER)]


@pytest.mark.parametrize("part", PARTS, ids=range(len(PARTS)))
def test_a_question_is_answered_as_it_was_kept(part):
    for asked in part:
        assert reading(asked) == (asked["says"] or []), asked["ask"]
