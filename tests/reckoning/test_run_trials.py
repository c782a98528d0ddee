"""What was said of a step becomes a trial: of what ran, where it was said, else of what was planned."""

from __future__ import annotations

import pytest

from jobsheet.errors import CommandError
from jobsheet.model.what_ran import NOT_CUT, Entry
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.reckoning.run_trials import as_it_ran, trial_of_entry


@pytest.fixture(scope="module")
def reckoned():
    from jobsheet.paths import sample_jobs
    from jobsheet.storage.job_file import read_job

    return Reckoner().reckon(read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml"))


def entry(**more):
    return Entry(**{"job": "HM-100", "plan": "x", "revision": 1, "machine": "bench-mill-b-1", "date": "2026-11-02", "about": "step", "key": "drill", "outcome": "clean", **more})  # fmt: skip


def test_as_planned_where_nothing_else_was_said(reckoned):
    trial = trial_of_entry(entry(), reckoned)
    torque = reckoned.operations["drill"].figures.value("torque")
    assert (trial.process, trial.outcome) == ("drill", "clean")
    assert trial.of("spindle-torque").demand == pytest.approx(torque)


def test_another_speed_asks_the_same_torque_of_another_step_of_the_drive(reckoned):
    operation, setting = reckoned.job.find("drill")[1], reckoned.settings["drill"]
    planned = as_it_ran(operation, setting, entry())
    faster = as_it_ran(operation, setting, entry(speed=1450 / 60))
    assert faster.figures.value("spindle_speed") == pytest.approx(1450 / 60)
    assert faster.figures.value("torque") == pytest.approx(planned.figures.value("torque"))


@pytest.mark.parametrize(
    "more", [{"outcome": ""}, {"outcome": NOT_CUT}, {"about": "minutes"}, {"key": "clamp"}]
)
def test_what_was_not_cut_or_has_no_force_is_no_trial(reckoned, more):
    assert trial_of_entry(entry(**more), reckoned) is None


def test_a_step_that_is_gone_is_refused(reckoned):
    with pytest.raises(CommandError, match="no step 70"):
        trial_of_entry(entry(key="gone", number=70), reckoned)
