"""What lies on the desk at the start: the job that is asked for, the last one, or a copy
of the sample with what went wrong.
"""

from __future__ import annotations

import shutil

import pytest

from jobsheet.gui.desk.opening import SAMPLE, is_sample, open_at_start
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import job_digest, read_job
from jobsheet.storage.kept.recent import used


@pytest.fixture
def job(tmp_path):
    path = tmp_path / "cover.yaml"
    shutil.copy(sample_jobs() / "hm-104-cover-plate.yaml", path)
    return path


def test_a_file_is_opened_with_its_digest(job):
    opened = open_at_start(str(job))
    assert opened.job == read_job(job)
    assert (opened.path, opened.sample, opened.problem) == (job, "", "")
    assert opened.digest == job_digest(job)


def test_a_first_start_has_a_copy_of_the_sample():
    opened = open_at_start(None)
    assert (opened.path, opened.sample, opened.problem) == (None, SAMPLE, "")
    assert opened.job == read_job(sample_jobs() / SAMPLE)


def test_the_job_that_was_open_last_comes_again_while_it_is_there(job):
    used(job, "plate")
    assert open_at_start(None).path == job
    job.unlink()
    assert open_at_start(None).sample == SAMPLE


def test_a_sample_is_a_copy_that_is_not_written_over():
    path = sample_jobs() / "hm-104-cover-plate.yaml"
    opened = open_at_start(str(path))
    assert (opened.path, opened.sample) == (None, path.name)
    assert is_sample(path)
    assert not is_sample(path.with_name("..") / path.name)


@pytest.mark.parametrize("text", ["", "job: [", "job:\n  machine: none\n"])
def test_what_cannot_be_used_is_said_over_the_sample(tmp_path, text):
    path = tmp_path / "broken.yaml"
    path.write_text(text)
    opened = open_at_start(str(path))
    assert opened.problem
    assert (opened.path, opened.sample) == (None, SAMPLE)


def test_a_file_that_is_gone_is_said(tmp_path):
    assert "gone.yaml" in open_at_start(str(tmp_path / "gone.yaml")).problem


def test_printed_sheets_are_asked_about_first(tmp_path):
    paper = tmp_path / "sheets.pdf"
    paper.write_bytes(b"%PDF-1.7\n")
    opened = open_at_start(str(paper))
    assert (opened.paper, opened.path, opened.sample) == (paper, None, SAMPLE)
