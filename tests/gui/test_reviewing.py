"""Remarks and notes about the job on the desk: the notes of the review and
the reminders, each to its step.
"""

from __future__ import annotations

from jobsheet.gui.desk.reviewing import remarks_and_notes
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


def test_of_a_sample_every_note_is_to_a_step_of_it_and_all_could_be_checked():
    job = read_job(sample_jobs() / "hm-104-cover-plate.yaml")
    remarks, notes, not_checked = remarks_and_notes(job, Reckoner().reckon(job))
    keys = {one.key for _, one in job.operations()}
    assert notes
    assert {note.operation for note in notes if note.scope == "step"} <= keys
    assert not_checked == ()
    assert all(set(one.operations) <= keys for one in remarks)


def test_a_reminder_is_a_note_with_its_source():
    found = []
    for path in sorted(sample_jobs().glob("*.yaml"))[:4]:
        job = read_job(path)
        found += remarks_and_notes(job, Reckoner().reckon(job))[1]
    assert all(note.text for note in found)
    assert any(note.level == "note" and note.source for note in found)
