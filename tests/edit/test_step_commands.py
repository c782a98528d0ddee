"""Steps added, doubled, moved and taken out keep keys and numbers that paper knows."""

from __future__ import annotations

import pytest

from jobsheet.edit.several_steps import MoveSteps
from jobsheet.edit.step_commands import AddOperation, AddSetUp, DeleteSetUp, MoveSetUp, Renumber
from jobsheet.errors import CommandError
from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.job_writing import write_job

from .job_edited import JOB, numbers


def test_many_inserts_at_one_place_stay_unique_and_renumber_mends_them():
    job = JOB
    for _ in range(30):
        job = AddOperation("set-up-1", "bench-step", "clamp").apply(job)
    assert len(set(numbers(job))) == len(numbers(job)) == 38
    assert numbers(Renumber().apply(job)) == [10 * n for n in range(1, 39)]
    assert job_from_text(write_job(job), "x") == job


def test_set_ups_are_added_moved_and_taken_out():
    job = AddSetUp("set-up-1").apply(JOB)
    assert [(one.key, one.number) for one in job.set_ups] == [("set-up-1", 1), ("set-up-2", 2)]
    job = MoveSteps(("finish",), "set-up-2", 0).apply(job)
    assert job.find("finish")[0].key == "set-up-2"
    swapped = MoveSetUp("set-up-2", 0).apply(job)
    assert [(one.key, one.number) for one in swapped.set_ups] == [("set-up-2", 1), ("set-up-1", 2)]
    assert len(DeleteSetUp("set-up-2").apply(job).set_ups) == 1
    with pytest.raises(CommandError, match="at least one"):
        DeleteSetUp("set-up-1").apply(JOB)
