"""The minutes around the cut."""

from __future__ import annotations

import pytest

from jobsheet.reckoning.minutes import by_kind, minutes_of
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


def test_the_kinds_add_up_to_what_was_planned(samples):
    for path in sorted(samples.glob("*.yaml")):
        reckoned = Reckoner(learns=True).reckon(read_job(path))
        for set_up in reckoned.job.set_ups:
            parts, whole = by_kind(set_up, reckoned), minutes_of(set_up, reckoned)
            assert parts.set_up + parts.milling + parts.holes + parts.hand == pytest.approx(whole.whole)
