"""Choose the tool: every tool of the list stands on the sheet, and only the
key says which is right and why.
"""

from __future__ import annotations

import pytest

from jobsheet.lessons.cutter_exercise import cutter_exercise
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import words_of
from jobsheet.report.lesson.cutter_pages import cutter_groups, cutter_key_groups, cutter_name
from jobsheet.storage.job_file import read_job


@pytest.fixture
def exercise(samples):
    return cutter_exercise(Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml")), 1, 7, 1)


def _said(groups):
    return " ".join(words_of(tuple(groups)))


def test_every_question_has_its_tools_and_nothing_gives_one_away(exercise):
    said = _said(cutter_groups(exercise))
    assert cutter_name(exercise) == "HM-103, which tool"
    for question in exercise.questions:
        assert question.ask in said
        for one in question.choices:
            assert one.line in said
            if one.refused is not None:
                assert one.refused.words not in said


def test_the_key_says_of_every_tool_whether_and_why_not(exercise):
    groups = cutter_key_groups(exercise)
    said = _said(groups)
    assert len(groups) == len(exercise.questions) + 1
    assert said.count("right") >= len(exercise.questions)
    for question in exercise.questions:
        assert question.right.line in said
        for one in question.choices:
            if one.refused is not None:
                assert one.refused.words.rstrip(".") in said
                assert one.refused.title in said
