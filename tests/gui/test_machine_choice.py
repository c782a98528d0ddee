"""The job on each machine: how many steps would not fit, and which, the worst first."""

from __future__ import annotations

import pytest

from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.edits.machine_choice import MachineLook, machines
from jobsheet.paths import sample_jobs
from jobsheet.storage.card_files import card_names
from jobsheet.storage.job_file import blank_job, read_job


@pytest.fixture
def desk(qapp):
    return Desk(read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml"))


def test_every_card_is_listed_with_its_title(qapp):
    found = machines()
    assert tuple(one.key for one in found) == card_names()
    assert all(one.title and one.under for one in found)


def test_on_its_own_machine_it_is_planned_already(desk):
    seen = MachineLook(desk)(desk.job.machine)
    assert seen.why_not == "The job is planned for this machine already."
    assert seen.row.startswith("planned")


def test_what_does_not_fit_is_named_with_its_reason(desk):
    looking = MachineLook(desk)
    for name in card_names():
        seen = looking(name)
        every = len(looking.fits[name].steps)
        lost = len(seen.misfits)
        assert lost <= every
        assert (seen.sign[0] == "verdict-beyond") == bool(lost)
        if lost:
            assert f"{lost} of {every}" in seen.row
            assert all(one.why and one.title and one.icon.startswith("op-") for one in seen.misfits)
            assert "the worst first" in seen.more
        elif name != desk.job.machine:
            assert seen.row == f"all {every} fit"


def test_a_card_that_is_not_there_says_why(desk):
    seen = MachineLook(desk)("no-such-card")
    assert seen.row == "cannot be looked at"
    assert seen.why_not == seen.more
    assert "no-such-card" in seen.more


def test_a_job_without_steps_fits_everywhere(qapp):
    desk = Desk(blank_job(card_names()[0]))
    assert "no step is planned yet" in MachineLook(desk)(card_names()[-1]).head
