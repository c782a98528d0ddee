"""What a learner takes away: the result, and where an order goes wrong the work as it stands there."""

from __future__ import annotations

import pytest

from jobsheet.lessons.marked_sheet import Result
from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.lessons.slips import step_words
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import Picture, words_of
from jobsheet.report.lesson.exercise_page import FOOT, Head
from jobsheet.report.lesson.result_page import first_undoable, result_document
from jobsheet.storage.job_file import read_job


@pytest.fixture
def reckoned(samples):
    return Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml"))


@pytest.fixture
def exercise(reckoned):
    return order_exercise(reckoned, 1, 7, 1)


def _right(exercise):
    key = exercise.blocks[0].set_up.key
    order = exercise.asked.inside(key)
    found, left = [], list(order.items)
    while left:
        one = next(one for one in left if not any(order.before(other, one) for other in left if other != one))
        found.append(one)
        left.remove(one)
    return key, found


def test_a_right_order_can_be_done_to_its_end(exercise):
    key, order = _right(exercise)
    assert first_undoable(exercise.asked.needed, {key: order}) is None
    assert first_undoable(exercise.asked.needed, {key: ()}) is None


def test_the_first_step_for_which_something_is_missing_is_named(exercise):
    key, order = _right(exercise)
    first, then = exercise.asked.inside(key).needed()[0]
    turned = [one for one in order if one != first]
    turned.insert(turned.index(then) + 1, first)
    set_up, done, stuck = first_undoable(exercise.asked.needed, {key: turned})
    assert set_up == key
    assert turned[len(done)] == stuck
    assert list(done) == turned[: len(done)]
    assert any(exercise.asked.needed.steps.before(other, stuck) for other in turned[len(done) + 1 :])


def test_the_page_has_the_lines_and_the_picture_only_where_it_goes_wrong(reckoned, exercise):
    head = Head(job=reckoned.job, exercise="HM-103, set-up 1", sheet=4, machine="Knee mill K-2")
    key, order = _right(exercise)
    result = Result(lines=("Nearly there.", "The hole would wander."), right=False, data={})
    words = step_words(reckoned)
    good = result_document(head, result, exercise.asked.needed, {key: order}, words)
    bad = result_document(head, result, exercise.asked.needed, {key: list(reversed(order))}, words)
    for made in (good, bad):
        said = " ".join(words_of(made.pages))
        assert "Nearly there." in said
        assert "The hole would wander." in said
        assert "Result 4" in said
        assert made.source == b""
        assert made.pages[0].foot == (FOOT,)
    assert not any(isinstance(one, Picture) for one in good.pages[0].blocks)
    assert isinstance(bad.pages[0].blocks[-1], Picture)
    assert len(result_document(head, result).pages) == 1
