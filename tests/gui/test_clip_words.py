"""Steps as plain lines for any other program: one line an action, and each on one line."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.edits.clip_words import lines_of
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job


@pytest.fixture
def desk(qapp):
    return Desk(read_job(sample_jobs() / "hm-104-cover-plate.yaml"))


def test_nothing_is_no_lines(desk):
    assert lines_of(desk, (), ()) == []


def test_a_set_up_comes_with_its_heading_and_every_step(desk):
    set_up = desk.job.set_ups[0]
    lines = lines_of(desk, (set_up,), ())
    assert len(lines) >= 1 + len(set_up.operations)
    for operation in set_up.operations:
        assert any(line.startswith(f"{operation.number} ") for line in lines)
    assert not lines[0].startswith(f"{set_up.operations[0].number} ")


def test_a_step_has_what_stands_on_the_sheet(desk):
    _, drill = desk.job.find("drill")
    lines = lines_of(desk, (), (drill,))
    row = next(row for row in desk.outcome("drill").rows if row.spindle)
    line = next(line for line in lines if f"{row.spindle} rpm" in line)
    assert row.do in line
    assert row.cutter.split("\n")[0].split()[0] in line
    assert all("  " not in one and "\n" not in one for one in lines)


def test_a_step_without_figures_has_its_number_and_title(desk):
    desk.do(SetField("drill", "cutter", "drill"))
    desk.reckoned = None
    _, drill = desk.job.find("drill")
    (line,) = lines_of(desk, (), (drill,))
    assert line.startswith(f"{drill.number} ")
    assert "rpm" not in line
