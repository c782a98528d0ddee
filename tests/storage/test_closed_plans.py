"""A plan that left the desk is kept as its bytes were, once, and found by the code that its paper has."""

from __future__ import annotations

import pytest

from jobsheet.errors import CannotWrite
from jobsheet.storage.check_code import check_code
from jobsheet.storage.kept.closed_plans import (
    MADE,
    PRINTED,
    close_plan,
    closed_as,
    closed_plans,
    folder_of,
    is_whole,
    job_of,
    newer_than,
)


@pytest.fixture
def job(samples, tmp_path):
    path = tmp_path / "plate.yaml"
    path.write_bytes((samples / "hm-100-drilled-plate-b1.yaml").read_bytes())
    return path


def test_it_is_kept_byte_by_byte_and_named_by_number_day_and_code(job):
    data = job.read_bytes()
    kept = close_plan(job, data, 2, PRINTED, "2026-11-30")
    assert kept.path.name == f"plan-2-2026-11-30-printed-{check_code(data)}.yaml"
    assert kept.path.read_bytes() == data
    assert (closed_plans(job), closed_as(job, data)) == ((kept,), kept)
    assert is_whole(kept)
    assert (job_of(kept.path), job_of(job)) == (job, None)


def test_the_very_same_plan_is_closed_once(job):
    first = close_plan(job, job.read_bytes(), 1, PRINTED, "2026-11-29")
    assert close_plan(job, job.read_bytes(), 1, MADE, "2026-11-30") == first
    assert len(closed_plans(job)) == 1


def test_they_come_in_the_order_of_their_numbers(job):
    for number in (10, 2, 1):
        close_plan(job, job.read_bytes() + b"\n" * number, number, PRINTED, "2026-11-30")
    assert [one.number for one in closed_plans(job)] == [1, 2, 10]


def test_what_was_changed_in_the_folder_is_noticed(job):
    kept = close_plan(job, job.read_bytes(), 1, PRINTED, "2026-11-30")
    kept.path.write_bytes(job.read_bytes() + b"# by hand\n")
    assert not is_whole(kept)


def test_it_is_superseded_once_the_job_says_otherwise(job):
    kept = close_plan(job, job.read_bytes(), 0, PRINTED, "2026-11-30")
    assert newer_than(kept.path) == ""
    job.write_bytes(job.read_bytes().replace(b"Drilled plate", b"Drilled plates"))
    assert newer_than(kept.path) == "a later plan"
    assert newer_than(job) == ""
    job.write_bytes(b"no job")
    assert newer_than(kept.path) == "a later plan, which cannot be read"


def test_files_of_other_names_are_none(job):
    folder_of(job).mkdir()
    for name in ("notes.txt", "plan-1.yaml", "plan-1-2026-11-30-printed-D495-6QV9.yaml"):
        (folder_of(job) / name).write_text("x", encoding="utf-8")
    assert closed_plans(job) == ()
    assert job_of(folder_of(job) / "plan-1.yaml") is None


def test_where_the_disk_refuses_it_is_said(job):
    folder_of(job).write_text("a file in its place", encoding="utf-8")
    with pytest.raises(CannotWrite, match=r"plate\.plans cannot be made beside plate\.yaml"):
        close_plan(job, job.read_bytes(), 1, PRINTED, "2026-11-30")
