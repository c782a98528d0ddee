"""Every edit can be undone, typing too; numbers and keys stay what paper knows."""

from __future__ import annotations

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, invariant, rule

from jobsheet.edit.commands import SetField
from jobsheet.edit.history import History
from jobsheet.edit.several_steps import DeleteSteps, DuplicateSteps, MoveSteps
from jobsheet.edit.step_commands import AddOperation, Renumber
from jobsheet.errors import CommandError, JobsheetError
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.job_writing import write_job

from .job_edited import JOB, numbers


def keys(job):
    return [operation.key for _, operation in job.operations()]


def test_typing_in_one_field_is_one_step_and_undo_takes_it_back():
    history = History(JOB)
    for text in ("0", "0.", "0.5"):
        history.type(SetField("face-rough", "depth", text))
    assert history.job.find("face-rough")[1].fields.depth.text == "0.5"
    history.undo()
    assert history.job is JOB
    assert not history.can_undo
    history.redo()
    assert history.job.find("face-rough")[1].fields.depth.text == "0.5"


def test_what_cannot_be_read_is_kept_as_a_draft_and_undone_with_it():
    history = History(JOB)
    history.type(SetField("face-rough", "depth", "0.5 im"))
    assert history.drafts == {("face-rough", "depth"): "0.5 im"}
    assert history.job is JOB
    assert history.changed
    history.undo()
    assert not history.drafts
    history.redo()
    assert history.drafts
    history.type(SetField("face-rough", "depth", "0.5 in"))
    assert not history.drafts


def test_a_listener_hears_what_changed_and_who_asked():
    history = History(JOB)
    heard = []
    history.subscribe(heard.append)
    history.do(SetField("drill", "feed", "0.1"), asker="form")
    history.do(DeleteSteps(("tap",)))
    history.do(SetField("job:part", "name", "Plate"))
    assert (heard[0].keys, heard[0].order, heard[0].header, heard[0].asker) == (
        {"drill"},
        False,
        False,
        "form",
    )
    assert heard[1].order
    assert heard[2].header


def test_saved_and_changed():
    history = History(JOB)
    assert not history.changed
    history.do(SetField("drill", "feed", "0.1"))
    assert history.changed
    history.mark_saved()
    assert not history.changed
    history.undo()
    assert history.changed
    history.redo()
    assert not history.changed
    history.mark_unsaved()
    assert history.changed


@pytest.mark.parametrize(
    ("command", "expected"),
    [
        (AddOperation("set-up-1", "drill", "spot"), [10, 20, 30, 40, 50, 55, 60, 70, 80]),
        (AddOperation("set-up-1", "drill"), [10, 20, 30, 40, 50, 60, 70, 80, 90]),
        (DuplicateSteps(("clamp",)), [10, 15, 20, 30, 40, 50, 60, 70, 80]),
        (DeleteSteps(("spot",)), [10, 20, 30, 40, 60, 70, 80]),
        (MoveSteps(("tap",), "set-up-1", 0), [5, 10, 20, 30, 40, 50, 60, 80]),
        (MoveSteps(("clamp",), "set-up-1", 7), [20, 30, 40, 50, 60, 70, 80, 90]),
    ],
)
def test_a_step_that_is_put_in_gets_a_number_between(command, expected):
    """design.md: 10, 20, 30; an insert gets 25. Stored, not derived."""
    assert numbers(command.apply(JOB)) == expected


def test_moving_to_where_it_is_changes_nothing():
    assert MoveSteps(("spot",), "set-up-1", 4).apply(JOB) is JOB


def test_what_is_gone_is_said():
    for command in (
        DeleteSteps(("none",)),
        DuplicateSteps(("none",)),
        AddOperation("none", "drill"),
        SetField("drill", "none", "1"),
    ):
        with pytest.raises(CommandError):
            command.apply(JOB)


class Edits(RuleBasedStateMachine):
    """Random edits, undone and redone: the way back is exact, files stay readable."""

    def __init__(self):
        super().__init__()
        self.history = History(JOB)
        self.past = [JOB]
        self.at = 0

    def step(self, act):
        before = self.history.job
        act()
        if self.history.job is not before:
            self.past[self.at + 1 :] = [self.history.job]
            self.at += 1

    @rule(data=st.data(), command=st.sampled_from(["add", "delete", "duplicate", "move", "type", "renumber"]))
    def edit(self, data, command):
        known = keys(self.history.job)
        key = data.draw(st.sampled_from(known)) if known else "none"
        made = {
            "add": lambda: AddOperation(
                "set-up-1", data.draw(st.sampled_from(["drill", "face", "tap", "bench-step"])), key
            ),
            "delete": lambda: DeleteSteps((key,)),
            "duplicate": lambda: DuplicateSteps((key,)),
            "move": lambda: MoveSteps((key,), "set-up-1", data.draw(st.integers(0, 9))),
            "type": lambda: SetField(
                key,
                "note",
                data.draw(st.text(st.characters(codec="ascii", exclude_categories=["Cc"]), max_size=5)),
            ),
            "renumber": Renumber,
        }[command]()

        def act():
            try:
                self.history.do(made)
            except JobsheetError:
                return

        self.history.break_merge()
        self.step(act)

    @rule()
    def undo(self):
        if self.history.can_undo:
            self.history.undo()
            self.at -= 1
            assert self.history.job == self.past[self.at]

    @rule()
    def redo(self):
        if self.history.can_redo:
            self.history.redo()
            self.at += 1
            assert self.history.job == self.past[self.at]

    @invariant()
    def numbers_and_keys_are_unique_and_the_file_reads_back(self):
        job = self.history.job
        assert len(set(keys(job))) == len(keys(job))
        assert len(set(numbers(job))) == len(numbers(job))
        assert job_from_text(write_job(job), "x") == job


TestEdits = Edits.TestCase
TestEdits.settings = settings(max_examples=25, stateful_step_count=20, deadline=None)
