"""The plan that a run is recorded with: the job as it was saved, and whether the
one on the desk is another by now.
"""

from __future__ import annotations

import shutil

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.saved_plan import saved_plan
from jobsheet.paths import sample_jobs
from jobsheet.storage.check_code import check_code
from jobsheet.storage.job_file import job_digest, read_job


@pytest.fixture
def desk(qapp, tmp_path):
    path = tmp_path / "cover.yaml"
    shutil.copy(sample_jobs() / "hm-104-cover-plate.yaml", path)
    made = Desk(read_job(path))
    made.path, made.digest = path, job_digest(path)
    return made


def test_what_was_never_saved_has_none(qapp):
    assert saved_plan(Desk(read_job(sample_jobs() / "hm-104-cover-plate.yaml"))) is None


def test_an_unchanged_job_is_its_file(desk):
    found = saved_plan(desk)
    assert (found.job, found.changed) == (desk.job, False)
    assert found.code == check_code(desk.path.read_bytes())
    assert found.revision == desk.job.plan_number
    assert found.reckoned is desk.reckoned


def test_what_is_changed_on_the_desk_is_not_what_was_printed(desk):
    key = desk.job.set_ups[0].operations[0].key
    desk.do(SetField(key, "note", "hold it well"))
    found = saved_plan(desk)
    assert found.changed
    assert found.job == read_job(desk.path) != desk.job
    assert found.reckoned.job.find(key)[1].fields.note != "hold it well"


def test_a_file_that_was_changed_outside_counts_as_it_is(desk):
    text = desk.path.read_text()
    desk.path.write_text(text.replace("HM-104", "HM-999", 1))
    found = saved_plan(desk)
    assert not found.changed
    assert found.job.part.number == "HM-999"


def test_a_file_that_is_gone_is_said(desk):
    desk.path.unlink()
    with pytest.raises(JobsheetError):
        saved_plan(desk)
