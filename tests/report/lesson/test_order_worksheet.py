"""The worksheet of an order: slips, as many boxes as slips, and no answer."""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import Line, Text
from jobsheet.lessons.figure_exercise import order_questions
from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import words_of
from jobsheet.report.lesson import order_worksheet
from jobsheet.report.lesson.order_key import pairs_asked
from jobsheet.report.lesson.order_worksheet import BOX, WIDE, exercise_name, question_groups, worksheet_groups
from jobsheet.storage.job_file import read_job


def _made(samples, level):
    reckoned = Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml"))
    exercise = order_exercise(reckoned, level, 7, 1)
    return exercise, reckoned, order_questions(reckoned, exercise)


@pytest.mark.parametrize("level", [1, 4])
def test_every_slip_stands_there_and_no_reason_does(samples, level):
    exercise, reckoned, questions = _made(samples, level)
    said = " ".join(words_of(tuple(worksheet_groups(exercise, reckoned, questions))))
    for block in exercise.blocks:
        assert all(slip.words in said for slip in block.slips)
    for _, pair in pairs_asked(exercise):
        assert pair.because not in said
    assert all(question.ask in said for question in questions)
    assert not any(line in said for question in questions for line in question.working if len(line) > 12)


def test_it_is_named_by_its_set_up_or_by_the_part(samples):
    exercise, _, _ = _made(samples, 1)
    assert exercise_name(exercise) == f"HM-103, set-up {exercise.blocks[0].set_up.number}"
    several, _, _ = _made(samples, 4)
    assert exercise_name(several) == ("HM-103, order of work" if several.several else exercise_name(several))


@pytest.mark.parametrize("count", [1, 2, 9, 10, 11, 23])
@pytest.mark.parametrize("head", ["", "set-up"])
def test_there_are_so_many_boxes_within_the_page(count, head):
    drawing = order_worksheet._row(count, {0: "K"}, head)
    boxes = [item for item in drawing.items if isinstance(item, Line) and item.weight == "outline"]
    assert len(boxes) == count
    for one in boxes:
        xs, ys = [x for x, _ in one.points], [y for _, y in one.points]
        assert min(xs) >= 0
        assert max(xs) <= WIDE + 1e-6
        assert max(xs) - min(xs) == pytest.approx(BOX)
        assert max(ys) <= drawing.height
    assert [item.words for item in drawing.items if isinstance(item, Text) and item.style == "title"] == ["K"]


def test_without_questions_there_is_no_room_for_them(samples):
    assert question_groups(()) == []
    _, _, questions = _made(samples, 3)
    assert len(question_groups(questions)) == -(-len(questions) // 2)
