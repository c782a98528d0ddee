"""The rules are asked once for each job, and what they say is told where it is new."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.gui.desk import reviewing
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.reading_through import ReadingThrough
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job


@pytest.fixture
def desk(qapp):
    return Desk(read_job(sample_jobs() / "hm-104-cover-plate.yaml"))


@pytest.fixture
def asked(monkeypatch):
    times, plain = [], reviewing.remarks_and_notes

    def counted(*args):
        times.append(1)
        return plain(*args)

    monkeypatch.setattr(reviewing, "remarks_and_notes", counted)
    return times


def test_the_same_job_is_read_once(desk, asked):
    reading = ReadingThrough(desk)
    assert reading.read(None) is True
    assert desk.is_read
    assert reading.read(None) is False
    assert len(asked) == 1
    reading.forget()
    assert reading.read(None) is False, "it says the same"
    assert len(asked) == 2


def test_a_job_with_another_fault_is_news(desk, asked):
    reading = ReadingThrough(desk)
    reading.read(None)
    before = desk.remarks
    desk.do(DeleteSteps(("spot",)))
    assert reading.read(None) is True
    assert desk.remarks != before


def test_without_figures_nothing_is_asked(desk, asked):
    desk.reckoned = None
    assert ReadingThrough(desk).read(None) is False
    assert asked == []
    assert not desk.is_read


def test_a_remark_of_this_moment_is_found_again_or_true_no_longer(desk, asked):
    reading = ReadingThrough(desk)
    desk.do(DeleteSteps(("spot",)))
    reading.read(None)
    one = desk.remarks[0]
    assert reading.now(one, None) is one
    assert reading.now(replace(one, rule="no such rule"), None) is None
    desk.do(SetField(desk.job.set_ups[0].operations[0].key, "note", "hold it well"))
    assert reading.now(one, None) is not None
    before = len(asked)
    reading.read(None)
    assert len(asked) == before, "it was read when the remark was looked at"
