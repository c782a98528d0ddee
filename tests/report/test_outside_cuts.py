"""Cuts along the outside: where the cutter's centre stands at each, the last of them the whole width."""

from __future__ import annotations

import pytest

from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.rows.outside_cuts import outside, widths_of
from jobsheet.storage.job_file import read_job


def reckoned(number):
    return Reckoner().reckon(
        read_job(next(path for path in sorted(sample_jobs().glob("*.yaml")) if f"-{number}-" in path.name))
    )


def walls(found):
    for set_up, operation in found.job.operations():
        if operation.kind == "side-mill" and operation.fields.path is None:
            yield set_up, operation


@pytest.mark.parametrize("number", [102, 103, 104])
def test_every_wall_has_its_cuts_and_the_last_is_the_whole_width(number):
    found = reckoned(number)
    for set_up, operation in walls(found):
        widths, left = widths_of(found, operation, operation.fields.width.value)
        assert widths[-1] == pytest.approx(operation.fields.width.value)
        assert list(widths) == sorted(widths)
        said = outside(found, set_up, operation)
        assert said.side == operation.fields.side
        assert len(said.distances) == len(widths)
        assert said.last_full == (left > 0)
        assert said.handle == ("x" if said.side in ("left", "right") else "y")


def test_a_face_and_a_hole_have_none():
    found = reckoned(100)
    for set_up, operation in found.job.operations():
        assert outside(found, set_up, operation) is None
