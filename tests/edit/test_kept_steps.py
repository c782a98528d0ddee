"""Every step kept: undo is the state before, redo the one after, typing on is
one step, and each is told once.
"""

from __future__ import annotations

from typing import NamedTuple

from jobsheet.edit.kept_steps import STEPS, Steps


class Moment(NamedTuple):
    value: int
    label: str = ""


class Counter(Steps):
    """Steps from number to number."""

    def to(self, value, merge=""):
        self._push(Moment(value, f"to {value}"), merge, None)


def counted():
    steps = Counter(Moment(0), lambda before, after, label, _asker: (before.value, after.value, label))
    told = []
    steps.subscribe(told.append)
    return steps, told


def test_there_and_back_and_there_again():
    steps, told = counted()
    assert (steps.can_undo, steps.can_redo, steps.undo_label) == (False, False, "")
    steps.to(1)
    steps.to(2)
    steps.undo()
    assert (steps.state.value, steps.undo_label, steps.redo_label) == (1, "to 1", "to 2")
    steps.redo()
    steps.redo()
    assert steps.state.value == 2
    assert told == [(0, 1, "to 1"), (1, 2, "to 2"), (2, 1, "to 2"), (1, 2, "to 2")]


def test_typing_on_is_one_step_until_the_field_is_left():
    steps, _ = counted()
    for value in (1, 2, 3):
        steps.to(value, "field")
    steps.break_merge()
    steps.to(4, "field")
    steps.undo()
    assert steps.state.value == 3
    steps.undo()
    assert steps.state.value == 0


def test_a_new_step_takes_away_what_was_undone():
    steps, _ = counted()
    steps.to(1)
    steps.undo()
    steps.to(2)
    assert not steps.can_redo
    steps.undo()
    assert steps.state.value == 0


def test_of_more_steps_than_are_kept_the_first_go():
    steps, _ = counted()
    for value in range(1, STEPS + 11):
        steps.to(value)
    while steps.can_undo:
        steps.undo()
    assert steps.state.value == 11
