"""What a learner has on the desk: slips, places, and what a try says; nothing before it."""

from __future__ import annotations

import pytest

from jobsheet.gui.places.lesson.order_desk import MOST_BRACKETS, OrderDesk
from jobsheet.lessons.order_exercise import order_exercise
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


@pytest.fixture(scope="module")
def exercise():
    return order_exercise(Reckoner().reckon(read_job(sample_jobs() / "hm-103-pivot-block.yaml")), 1, 7, 1)


@pytest.fixture
def desk(exercise):
    return OrderDesk(exercise)


def _fill(desk):
    while desk.left:
        desk.put(desk.left[0].letter)


def test_what_is_given_away_stands_there_and_cannot_be_moved(desk):
    for key in desk.fixed:
        at = desk.places.index(key)
        assert desk.move(at, 1) == at
        assert desk.slip_of(desk.slips[key].letter).key == key
    assert desk.placed == len(desk.fixed)


def test_a_slip_goes_into_the_next_empty_place_or_the_one_that_is_named(desk):
    first, second = desk.left[:2]
    empty = desk.next_place
    assert desk.put(first.letter.upper()) == empty
    last = max(at for at, key in enumerate(desk.places) if not key)
    assert desk.put(second.letter, last) == last
    assert desk.put(first.letter) is None, "a slip has one place"
    assert desk.put("?") is None
    assert desk.in_a_row == tuple(desk.places[: desk.next_place])


def test_the_last_one_before_an_empty_place_is_given_back(desk):
    slip = desk.left[0]
    at = desk.put(slip.letter)
    assert desk.give_back(len(desk.places) - 1) or desk.places[at] == slip.key
    assert slip in desk.left
    while desk.placed > len(desk.fixed):
        desk.give_back(len(desk.places) - 1)
    assert desk.give_back(len(desk.places) - 1) is False


def test_before_a_try_nothing_is_said_and_after_it_the_nearest_pairs(desk):
    _fill(desk)
    assert desk.next_place is None
    assert (desk.said, desk.brackets, desk.reason_lines()) == ((), (), [])
    assert desk.head == f"{len(desk.places)} of {len(desk.places)} placed."
    free = [at for at, key in enumerate(desk.places) if key not in desk.fixed]
    backwards = [desk.places[at] for at in reversed(free)]
    for at, key in zip(free, backwards, strict=True):
        desk.places[at] = key
    desk.attempt()
    assert desk.said
    assert desk.head == desk.said[0]
    assert len(desk.brackets) <= MOST_BRACKETS
    spans = [one.lower - one.upper for one in desk.brackets]
    assert spans == sorted(spans)
    assert all(span > 0 for span in spans)


def test_to_think_once_more_hides_all_of_it(desk):
    _fill(desk)
    desk.attempt()
    desk.reasons = True
    desk.look_again()
    assert (desk.said, desk.brackets, desk.reasons) == ((), (), False)
