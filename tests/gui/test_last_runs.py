"""How each step of a job went the last time: the words of its record, and nothing where there is none."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.gui.desk.last_runs import LastRun, last_runs
from jobsheet.model.what_ran import Entry
from jobsheet.storage.records.run_log import path_beside, record

NOISY = Entry(
    job="HM-103", plan="D495-6QV9-7Y6", revision=2, machine="knee-mill-k-2", date="2026-11-28", about="step", key="step-right",
    number=70, step="Step on the right end", outcome="noisy", layer=2,
)  # fmt: skip


def test_a_job_without_a_file_or_without_a_record_has_none(tmp_path, qapp):
    assert last_runs(None) == {}
    assert last_runs(tmp_path / "plate.yaml") == {}


def test_a_step_has_its_outcome_and_its_day_and_the_last_one_counts(tmp_path, qapp):
    job = tmp_path / "plate.yaml"
    record(job, (NOISY,))
    assert last_runs(job) == {"step-right": LastRun("noisy", "last: noisy 28 Nov")}
    record(job, (replace(NOISY, date="2026-11-30", outcome="clean", layer=0),))
    assert last_runs(job)["step-right"] == LastRun("clean", "last: clean 30 Nov")


def test_minutes_are_of_no_step(tmp_path, qapp):
    job = tmp_path / "plate.yaml"
    record(
        job,
        (replace(NOISY, about="minutes", key="", number=0, step="", outcome="", layer=0, cutting=1260.0),),
    )
    assert last_runs(job) == {}


def test_a_record_that_cannot_be_read_is_none_here(tmp_path, qapp):
    job = tmp_path / "plate.yaml"
    path_beside(job).mkdir()
    assert last_runs(job) == {}
