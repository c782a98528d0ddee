"""Several steps and whole set-ups at once: one step of undo each, with free keys
and numbers, whatever is chosen.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.history import History
from jobsheet.edit.several_steps import (
    DeleteSteps,
    DuplicateSteps,
    InsertSetUps,
    InsertSteps,
    MoveSteps,
    RepeatSetUp,
)
from jobsheet.errors import CommandError

from .jobs_edited import JOB, PLATE, done, keys, numbers


def test_steps_of_several_set_ups_are_taken_out_and_set_ups_stay():
    some = (keys(JOB)[0], keys(JOB)[-1])
    left = done(DeleteSteps(some), JOB)
    assert keys(left) == keys(JOB)[1:-1]
    assert len(left.set_ups) == len(JOB.set_ups)


def test_steps_move_together_in_their_order_and_get_numbers_between():
    set_up = PLATE.set_ups[0]
    names = keys(PLATE)
    moved = done(MoveSteps((names[-1], names[-2]), set_up.key, 1))
    assert keys(moved) == [names[0], *names[-2:], *names[1:-2]]
    assert numbers(moved) == sorted(numbers(moved))


def test_steps_move_to_another_set_up_from_several():
    first, last = keys(JOB)[0], keys(JOB)[-1]
    target = JOB.set_ups[2]
    moved = done(MoveSteps((last, first), target.key, 0), JOB)
    assert [one.key for one in moved.set_ups[2].operations][:2] == [first, last]


def test_moving_steps_to_where_they_are_changes_nothing():
    set_up = PLATE.set_ups[0]
    some = tuple(one.key for one in set_up.operations[1:3])
    assert MoveSteps(some, set_up.key, 1).apply(PLATE) is PLATE


def test_doubled_steps_stand_behind_the_last_of_them():
    names = keys(PLATE)
    made = done(DuplicateSteps((names[0], names[1])))
    assert keys(made)[:2] == names[:2]
    assert keys(made)[4:] == names[2:]
    assert numbers(made) == sorted(numbers(made))
    for old, new in zip(names[:2], keys(made)[2:4], strict=True):
        assert made.find(old)[1].fields is made.find(new)[1].fields


def test_a_set_up_is_repeated_with_its_steps_and_set_ups_are_numbered():
    place = 1
    made = done(RepeatSetUp(JOB.set_ups[place].key), JOB)
    first, copy = made.set_ups[place : place + 2]
    assert first is JOB.set_ups[place]
    assert [one.number for one in made.set_ups] == list(range(1, len(made.set_ups) + 1))
    assert replace(copy, key=first.key, number=first.number, operations=()) == replace(first, operations=())
    assert [one.fields for one in copy.operations] == [one.fields for one in first.operations]


def test_the_numbers_of_a_repeated_set_up_follow():
    last = JOB.set_ups[-1]
    made = done(RepeatSetUp(last.key), JOB)
    assert numbers(made) == sorted(numbers(made))


def test_what_is_gone_is_said():
    with pytest.raises(CommandError):
        DeleteSteps(("nobody",)).apply(PLATE)
    with pytest.raises(CommandError):
        MoveSteps((keys(PLATE)[0],), "nobody", 0).apply(PLATE)
    with pytest.raises(CommandError):
        InsertSteps((), PLATE.set_ups[0].key).apply(PLATE)


@pytest.mark.parametrize(
    ("command", "label"),
    [
        (DeleteSteps(("drill",)), "take out step 60"),
        (DuplicateSteps(("drill", "tap")), "duplicate steps 60 and 70"),
        (MoveSteps(("drill",), PLATE.set_ups[0].key, 0), "move step 60"),
        (InsertSteps(PLATE.set_ups[0].operations[:1], PLATE.set_ups[0].key, at_end=True), "paste step"),
        (InsertSetUps(PLATE.set_ups), "paste set-ups"),
        (RepeatSetUp(PLATE.set_ups[0].key), "repeat set-up 1"),
    ],
)
def test_undo_names_what_it_undoes(command, label):
    history = History(PLATE)
    history.do(command)
    assert history.undo_label.startswith(label)
    history.undo()
    assert history.redo_label.startswith(label)
