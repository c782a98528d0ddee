"""A step of ordinary work is kept as a trial with all that its demand rests on: worked out
again from the log it asks the same.
"""

from pathlib import Path

import pytest

from jobsheet.model.trials import Trial
from jobsheet.model.what_ran import Entry
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.reckoning.run_trials import trial_of_entry
from jobsheet.reckoning.worked_anew import anew
from jobsheet.storage.job_file import read_job

ROOT = Path(__file__).parents[2]
JOBS = [
    *sorted((ROOT / "sample_jobs").glob("*.yaml")),
    *sorted((ROOT / "tests" / "operations" / "jobs").glob("*.yaml")),
]


def entry(job, key, number, **said):
    return Entry(
        job="HM", machine=job.machine, date="2026-11-30", time="09:00", plan="", revision=0, about="step", key=key, number=number, outcome="clean", **said
    )  # fmt: skip


def trials_of(path):
    reckoned = Reckoner().reckon(read_job(path))
    for _, operation in reckoned.job.operations():
        trial = trial_of_entry(entry(reckoned.job, operation.key, operation.number), reckoned)
        if trial is not None and trial.of("chatter") is not None:
            yield operation, trial


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_worked_out_again_it_asks_what_it_asked(path):
    for operation, trial in trials_of(path):
        (again,) = anew([trial])
        assert again.of("chatter").share == pytest.approx(trial.of("chatter").share, rel=1e-6), operation.key


def test_a_wall_cut_in_two_was_cut_half_as_wide():
    """2 mm off in cuts of 1 mm, 6 mm down in layers of 3: what is said and planned is of one cut."""
    whole = Trial(
        machine="", date="", process="side", cutter="", cutter_kind="", material="", outcome="clean", asked=(),
        step=(("width", "2 mm"), ("cut", "1 mm"), ("depth", "6 mm"), ("layer", "3 mm")),
    )  # fmt: skip
    assert (whole.one_cut()["width"], whole.one_cut()["depth"]) == ("1 mm", "3 mm")
