"""An exercise is the same whenever it is made, gives nothing away, and its
answers are read as a hand writes them.
"""

from __future__ import annotations

import pytest

from jobsheet.lessons.order_exercise import NoExercise, order_exercise, order_marked
from jobsheet.lessons.slips import WrongAnswer
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import blank_job, read_job

from .answers_given import letters, sheet_with

# --- draws ---


# --- the exercise ---


def test_the_same_seed_gives_the_same_exercise(pivot):
    again = Reckoner().reckon(pivot.job)
    for level in (1, 2, 3):
        first, other = (order_exercise(one, level, 37, 4) for one in (pivot, again))
        assert [block.slips for block in first.blocks] == [block.slips for block in other.blocks]


def test_a_class_gets_different_sheets_that_are_all_far_from_right(pivot):
    made = [order_exercise(pivot, 3, 37, sheet) for sheet in range(1, 13)]
    assert len({tuple(slip.key for block in one.blocks for slip in block.slips) for one in made}) == 12
    for one in made:
        assert order_marked(one, one.example).total >= one.asked.worst / 2


def test_what_must_come_first_of_all_is_given_at_the_first_level(pivot):
    found = sheet_with(pivot, 1, "set-up-5")
    assert found.given == ("find-b-c", "")


def test_a_job_without_steps_says_so():
    with pytest.raises(NoExercise, match="no order worth asking at level 1"):
        order_exercise(Reckoner().reckon(blank_job("bench-mill-b-1")), 1, 1, 1)


# --- answers ---


def test_capitals_blanks_and_commas_are_read(pivot):
    found = sheet_with(pivot, 1, "set-up-5")
    right = letters(found, "find-b-c", "end-right", "step", "spot-threads", "drill-threads", "tap")
    for typed in (right, right.upper(), ", ".join(right)):
        assert order_marked(found, typed).total == 0
    other = letters(found, "find-b-c", "spot-threads", "end-right", "drill-threads", "step", "tap")
    assert order_marked(found, other).total == 0


def test_set_ups_and_their_steps_in_one_answer(pivot):
    found = order_exercise(pivot, 3, 37, 2)
    heads = {block.set_up.key: block for block in found.blocks}
    right = " ".join(
        heads[one.key].letter + letters(found, *(step.key for step in one.operations))
        for one in pivot.job.set_ups
        if one.key in heads
    )
    assert order_marked(found, right).total == 0
    first, second, *rest = right.split()
    assert order_marked(found, " ".join((second, first, *rest))).astray == 1


def test_what_cannot_be_read_is_said(pivot):
    one, several = sheet_with(pivot, 1, "set-up-5"), order_exercise(pivot, 3, 37, 2)
    with pytest.raises(WrongAnswer, match=r"“z” is no slip of sheet \d+; its letters are a b c d e f"):
        order_marked(one, "abz")
    with pytest.raises(WrongAnswer, match="“a” stands there more than once"):
        order_marked(one, "aba")
    with pytest.raises(WrongAnswer, match="begins with no set-up of sheet 2"):
        order_marked(several, "abc")


def test_a_run_of_steps_begins_before_the_holding_changes(samples):
    """The cover plate is screwed down after its first six steps: a run that began behind that
    would be said to lie under straps.
    """
    reckoned = Reckoner().reckon(read_job(samples / "hm-104-cover-plate.yaml"))
    keys = [operation.key for _, operation in reckoned.job.operations()]
    for sheet in range(1, 12):
        asked = order_exercise(reckoned, 1, 37, sheet).asked.steps["set-up-1"]
        assert keys.index(asked[0]) <= keys.index("screw")
