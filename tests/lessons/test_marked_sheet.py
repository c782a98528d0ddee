"""A sheet marked from what was typed: right where it is right, refused where it says nothing."""

from __future__ import annotations

import pytest

from jobsheet.lessons.figure_exercise import figure_exercise
from jobsheet.lessons.marked_sheet import marked_plan, marked_sheet
from jobsheet.lessons.slips import WrongAnswer


@pytest.mark.parametrize("asked", ["order", "figures", "cutter", "wrong", "missing"])
def test_nothing_typed_is_nothing_to_mark(pivot, asked):
    with pytest.raises(WrongAnswer, match="Nothing to mark"):
        marked_sheet(pivot, asked, 1, 1, 1, " ", "")


def test_figures_are_right_by_their_own_answers_and_wrong_by_twice_as_much(pivot):
    questions = figure_exercise(pivot, 1, 1, 1).questions
    plain = next(one for one in questions if one.kind not in ("dial", "tap drill"))
    at = questions.index(plain) + 1
    number = float(plain.answer.split()[0])
    right = marked_sheet(pivot, "figures", 1, 1, 1, "", f"{at}={number:g}")
    wrong = marked_sheet(pivot, "figures", 1, 1, 1, "", f"{at}={2 * number:g}")
    assert not wrong.right
    assert right.lines != wrong.lines
    assert not any("Not right" in line or "wrong" in line for line in right.lines)


def test_a_plan_of_one_s_own_is_marked_by_the_review(pivot):
    found = marked_plan(pivot.job, pivot.job)
    assert found.right
    assert found.data["remarks"] == []
    assert found.data["would the part be good"] is True
