"""The key of an order: every pair that is asked stands there with its reason, and what is free with it."""

from __future__ import annotations

import pytest

from jobsheet.lessons.figure_exercise import order_questions
from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import words_of
from jobsheet.report.lesson.order_key import key_groups, pairs_asked, worked_groups
from jobsheet.storage.job_file import read_job


@pytest.fixture(params=[1, 2, 3, 4])
def made(request, samples):
    reckoned = Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml"))
    exercise = order_exercise(reckoned, request.param, 7, 1)
    return exercise, order_questions(reckoned, exercise)


def test_every_pair_has_its_letters_and_its_reason(made):
    exercise, questions = made
    said = " ".join(words_of(tuple(key_groups(exercise, questions))))
    pairs = pairs_asked(exercise)
    assert pairs
    for words, pair in pairs:
        assert words in said
        assert pair.because in said
        assert pair.severity in said


def test_how_many_orders_are_right_and_how_to_mark_stand_there(made):
    exercise, questions = made
    said = " ".join(words_of(tuple(key_groups(exercise, questions))))
    count = exercise.asked.count()
    assert (f"{count:,} of them" if count is not None else "too many to be counted") in said
    assert f"needs {exercise.asked.worst} moves" in said
    assert "Free, never a mistake: " in said


def test_every_figure_is_worked_two_beside_each_other(made):
    _, questions = made
    groups = worked_groups(questions)
    assert len(groups) == -(-len(questions) // 2)
    said = " ".join(words_of(tuple(groups)))
    for one in questions:
        assert one.answer in said
        assert one.source in said
    assert worked_groups(()) == []
