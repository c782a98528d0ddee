"""A sheet of questions from the steps of a job: the same again for the same
seed, typed figures by their question.
"""

from __future__ import annotations

import pytest

from jobsheet.lessons.figure_exercise import figure_exercise, figures_checked, order_questions
from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.lessons.slips import WrongAnswer
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


def test_a_sheet_has_one_of_every_sort_and_is_the_same_again(samples):
    for level, most in ((1, 4), (3, 7)):
        first, other = (
            figure_exercise(Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml")), level, 5, 2)
            for _ in range(2)
        )
        assert first == other
        kinds = [one.kind for one in first.questions]
        assert len(kinds) == len(set(kinds)) == most


def test_figures_beside_slips_are_about_their_steps(samples):
    reckoned = Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml"))
    sheets = (order_exercise(reckoned, 1, 37, sheet) for sheet in range(1, 60))
    found = order_questions(reckoned, next(one for one in sheets if "set-up-5" in one.asked.steps))
    assert 2 <= len(found) <= 4
    assert not any("Face mill" in one.ask or "Reamer" in one.ask for one in found)


def test_typed_figures_name_their_question(samples):
    reckoned = Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml"))
    questions = figure_exercise(reckoned, 1, 37, 1).questions
    assert len(figures_checked(questions, "1=1 2=2")) == 2
    for typed in ("398", "9=398", "x=3"):
        with pytest.raises(WrongAnswer, match="says no question of this sheet"):
            figures_checked(questions, typed)
