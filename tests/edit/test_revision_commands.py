"""The next revision of a plan: numbered on, said in words, taken back like any edit."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.revision_commands import LONGEST, AddRevision, next_number, proposed
from jobsheet.errors import CommandError
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job


@pytest.fixture
def job(samples):
    return read_job(samples / "hm-100-drilled-plate-b1.yaml")


def test_numbers_count_on_and_what_was_typed_is_kept(job):
    one = AddRevision("first plan", "Trainer", "2026-11-25").apply(job)
    two = AddRevision("  step 40: other tip ", "Apprentice B", "2026-11-29").apply(one)
    assert [(each.number, each.changed, each.who) for each in two.revisions] == [
        (1, "first plan", "Trainer"), (2, "step 40: other tip", "Apprentice B"),
    ]  # fmt: skip
    assert next_number(two) == 3
    again = job_from_text(write_job(two), "plate.yaml")
    assert again.revisions == two.revisions
    # one was taken out of the file by hand: a number is never given twice
    assert next_number(replace(two, revisions=two.revisions[1:])) == 3


def test_a_revision_that_says_nothing_is_refused(job):
    with pytest.raises(CommandError, match="Say what changed"):
        AddRevision("   ", "Trainer", "2026-11-25").apply(job)


def test_what_changed_is_proposed_in_words(job):
    assert proposed(job, job) == "first plan"
    assert proposed(None, job) == "first plan"
    key = next(step.key for _, step in job.operations() if step.number == 20)
    deeper = SetField(key, "depth", "0.5 mm").apply(job)
    assert proposed(job, deeper) == "step 20, depth: 0.4 → 0.5 mm"
    noted = AddRevision("first plan", "Trainer", "2026-11-25").apply(job)
    assert proposed(job, noted) == ""  # nothing but the revision itself


def test_many_changes_are_counted_not_cut_in_a_word(job):
    changed = job
    for _, step in job.operations():
        changed = SetField(
            step.key, "note", f"looked at again by the trainer, {step.number} of this plan"
        ).apply(changed)
    said = proposed(job, changed)
    assert len(said) <= LONGEST + 20
    assert said.rpartition("; and ")[2].endswith(" more")
