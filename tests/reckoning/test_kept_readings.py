"""Cuts on all cards and metals are answered as they were when their readings were looked through."""

from __future__ import annotations

import pytest

from tests.reckoning.kept_readings import questions, reading

QUESTIONS = questions()
#: So many questions are asked by one test.
TOGETHER = 8


@pytest.mark.parametrize("first", range(0, len(QUESTIONS), TOGETHER))
def test_a_question_is_answered_as_it_was_kept(first):
    for asked in QUESTIONS[first : first + TOGETHER]:
        assert reading(asked) == (asked["says"] or []), asked["ask"]
