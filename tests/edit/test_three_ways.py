"""Two people change one plan: what only one changed is in it, what both changed is asked, and
nothing of either is lost unasked.
"""

from __future__ import annotations

import random

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.difference import changes
from jobsheet.edit.history import History
from jobsheet.edit.revision_commands import AddRevision
from jobsheet.edit.several_steps import DeleteSteps, MoveSteps
from jobsheet.edit.step_commands import AddOperation, AddSetUp, DeleteSetUp, Renumber
from jobsheet.edit.three_ways import MINE, THEIRS, TakeBoth, compared, order_of
from jobsheet.errors import JobsheetError
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job

BASE = read_job(sample_jobs() / "hm-103-pivot-block.yaml")
KEYS = [step.key for _, step in BASE.operations()]
SET_UPS = [one.key for one in BASE.set_ups]


def after(*commands, job=BASE):
    for command in commands:
        job = command.apply(job)
    return job


def note(key, text):
    return SetField(key, "note", text)


def test_what_only_one_changed_is_taken_by_itself():
    mine, theirs = (
        after(note(KEYS[0], "mine")),
        after(note(KEYS[1], "theirs"), SetField("job:part", "name", "Lever")),
    )
    both = compared(BASE, mine, theirs)
    assert both.choices == ()
    made = both.taken({})
    assert made == after(
        note(KEYS[0], "mine"), note(KEYS[1], "theirs"), SetField("job:part", "name", "Lever")
    )
    number = BASE.find(KEYS[1])[1].number
    assert [line.partition(":")[0] for line in both.brought] == ["Part name", f"step {number}, note"]


def test_a_step_that_both_changed_is_asked_as_a_whole_with_both_in_words():
    mine, theirs = after(note(KEYS[0], "slowly")), after(note(KEYS[0], "quickly"))
    (choice,) = compared(BASE, mine, theirs).choices
    number = BASE.find(KEYS[0])[1].number
    assert choice.what.startswith(f"step {number} ")
    assert choice.mine[-1].endswith("slowly")
    assert choice.theirs[-1].endswith("quickly")
    assert compared(BASE, mine, theirs).taken({choice.item: MINE}) == mine
    assert compared(BASE, mine, theirs).taken({choice.item: THEIRS}) == theirs


def test_the_same_change_by_both_is_no_question():
    one = after(note(KEYS[0], "slowly"))
    both = compared(BASE, one, after(note(KEYS[0], "slowly")))
    assert both.choices == ()
    assert both.taken({}) == one


def test_two_new_steps_of_one_key_are_two_steps_with_numbers_of_their_own():
    mine = after(AddOperation(SET_UPS[0], "drill", KEYS[0]))
    (new,) = {step.key for _, step in mine.operations()} - set(KEYS)
    mine = after(note(new, "mine"), job=mine)
    theirs = after(AddOperation(SET_UPS[0], "drill", KEYS[0]))
    made = compared(BASE, mine, theirs).taken({})
    assert len(made.operations()) == len(KEYS) + 2
    numbers = [step.number for _, step in made.operations()]
    assert len(set(numbers)) == len(numbers)
    assert job_from_text(write_job(made), "both.yaml") == made


def test_taken_out_by_one_and_changed_by_the_other_is_asked():
    mine, theirs = after(DeleteSteps((KEYS[2],))), after(note(KEYS[2], "new"))
    both = compared(BASE, mine, theirs)
    (choice,) = both.choices
    assert choice.mine == ("taken out",)
    assert both.taken({choice.item: MINE}) == mine
    assert both.taken({choice.item: THEIRS}) == theirs


def test_taken_out_by_one_and_left_by_the_other_is_out():
    mine, theirs = after(DeleteSteps((KEYS[2],))), after(note(KEYS[0], "new"))
    assert compared(BASE, mine, theirs).taken({}) == after(DeleteSteps((KEYS[2],)), note(KEYS[0], "new"))


def test_an_order_that_one_changed_counts_and_two_orders_are_asked():
    moved = after(MoveSteps((KEYS[1],), SET_UPS[0], 0))
    both = compared(BASE, moved, after(note(KEYS[3], "new")))
    assert both.choices == ()
    assert order_of(both.taken({})) == order_of(moved)
    both = compared(BASE, after(note(KEYS[3], "new")), moved)
    assert order_of(both.taken({})) == order_of(moved)
    other = after(MoveSteps((KEYS[2],), SET_UPS[0], 0))
    (choice,) = compared(BASE, moved, other).choices
    assert choice.what == "the order of the steps"
    assert order_of(compared(BASE, moved, other).taken({choice.item: THEIRS})) == order_of(other)


def test_other_units_are_the_one_plan_or_the_other_for_bare_numbers_would_mean_something_else():
    theirs = replace(after(note(KEYS[0], "new")), units="in")
    both = compared(BASE, after(note(KEYS[1], "mine")), theirs)
    (choice,) = both.choices
    assert both.taken({choice.item: THEIRS}) == theirs
    assert both.taken({}) == after(note(KEYS[1], "mine"))


def test_a_machine_goes_with_its_card():
    planned = replace(BASE, machine="bench-mill-b-1", card_hash="0" * 16)
    made = compared(BASE, after(note(KEYS[0], "new")), planned).taken({})
    assert (made.machine, made.card_hash) == (planned.machine, planned.card_hash)


def test_revisions_of_both_stand_the_own_one_counts_on():
    mine = after(AddRevision("mine", "A", "2026-11-30"))
    theirs = after(AddRevision("theirs", "B", "2026-11-30"))
    made = compared(BASE, mine, theirs).taken({})
    first = len(BASE.revisions)
    assert [(one.number, one.changed) for one in made.revisions[first:]] == [
        (theirs.revisions[-1].number, "theirs"),
        (theirs.revisions[-1].number + 1, "mine"),
    ]


def test_where_nobody_knows_what_both_began_from_all_that_differs_is_asked():
    mine, theirs = after(note(KEYS[0], "mine")), after(note(KEYS[1], "theirs"))
    both = compared(None, mine, theirs)
    assert {choice.item for choice in both.choices} == {("step", KEYS[0]), ("step", KEYS[1])}
    assert both.taken({("step", KEYS[1]): THEIRS}) == after(note(KEYS[0], "mine"), note(KEYS[1], "theirs"))


def test_it_is_one_edit_that_is_undone():
    history = History(after(note(KEYS[0], "mine")))
    both = compared(BASE, history.job, after(note(KEYS[1], "theirs")))
    history.do(TakeBoth(both))
    assert history.job.find(KEYS[1])[1].fields.note == "theirs"
    history.undo()
    assert history.job == after(note(KEYS[0], "mine"))


def _some(chance, job, name):
    """One edit by one hand."""
    keys = [step.key for _, step in job.operations()]
    key, to = chance.choice(keys), chance.choice([one.key for one in job.set_ups])
    return chance.choice(
        (
            note(key, f"{name} {chance.randint(0, 9)}"),
            AddOperation(to, chance.choice(("drill", "face", "bench-step")), at_front=chance.random() < 0.3),
            DeleteSteps((key,)),
            MoveSteps((key,), to, chance.randint(0, 4)),
            SetField("job:part", "name", name),
            AddSetUp(to),
            DeleteSetUp(to),
            Renumber(),
        )
    )


def _by_chance(chance, job, name):
    """Some edits by one hand."""
    for _ in range(chance.randint(0, 4)):
        try:
            job = _some(chance, job, name).apply(job)
        except (JobsheetError, IndexError):
            continue
    return job


@pytest.mark.parametrize("seed", range(60))
def test_any_two_hands(seed):
    """Of any two plans one is made that can be read, that asks about no change twice, and that
    has every step that nobody took out.
    """
    chance = random.Random(seed)
    mine, theirs = _by_chance(chance, BASE, "mine"), _by_chance(chance, BASE, "theirs")
    both = compared(BASE, mine, theirs)
    chosen = {choice.item: chance.choice((MINE, THEIRS)) for choice in both.choices}
    for choice in both.choices:
        assert choice.what
        assert choice.mine != choice.theirs or choice.item[0] in ("step", "set-up")
        assert all(choice.mine)
        assert all(choice.theirs)
    made = both.taken(chosen)
    assert job_from_text(write_job(made), "both.yaml") == made
    made_keys = {step.key for _, step in made.operations()}
    was, one, other = ({step.key for _, step in job.operations()} for job in (BASE, mine, both.theirs))
    assert (one - was) | (other - was) <= made_keys
    asked = {choice.item[1] for choice in both.choices if choice.item[0] == "step"}
    assert (one & other) - asked <= made_keys
    assert not ((was - one) | (was - other)) & made_keys - asked
    # The other way round it is the same plan but for the order and numbers of what is new.
    back = compared(BASE, theirs, mine)
    assert len(back.choices) == len(both.choices)
    # Put together once more with what was put together, nothing is asked.
    again = compared(both.theirs, made, both.theirs)
    assert again.choices == ()
    assert not changes(again.taken({}), made, most=None)
