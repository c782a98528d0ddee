"""What was said of a run is kept and taken back."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.reckoning.minutes import by_kind
from jobsheet.reckoning.paces import timed
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.reckoning.runs_kept import entry_of, keep
from jobsheet.storage.job_file import read_job
from jobsheet.storage.records.run_log import read_runs


def test_what_was_planned_then_is_in_the_record_and_stays_when_the_plan_changes(samples, tmp_path):
    path = tmp_path / "plate.yaml"
    path.write_bytes((samples / "hm-100-drilled-plate-b1.yaml").read_bytes())
    job = read_job(path)
    reckoned = Reckoner(learns=True).reckon(job)
    base = entry_of(path, job, "2026-11-29", "Trainer")
    keep(
        path, (replace(base, about="minutes", set_up=1, setting_up=1200.0, cutting=3000.0),), lambda: reckoned
    )
    (one,) = timed(read_runs(path)[0])
    planned = by_kind(job.set_ups[0], reckoned)
    assert (one.set_up, one.milling, one.holes, one.hand) == pytest.approx(
        (planned.set_up, planned.milling, planned.holes, planned.hand), rel=1e-5
    )
    assert (one.setting_up, one.cutting) == (1200.0, 3000.0)
