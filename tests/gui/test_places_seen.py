"""The places of a step from above, as its set-up lies and counts."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.gui.edits.places_seen import plan_of
from jobsheet.paths import sample_jobs
from jobsheet.storage.job_file import read_job


@pytest.fixture
def job():
    return read_job(sample_jobs() / "hm-104-cover-plate.yaml")


def _counting(job, **zero):
    set_up = job.set_ups[0]
    return replace(job, set_ups=(replace(set_up, zero=replace(set_up.zero, **zero)), *job.set_ups[1:]))


def test_four_holes_stand_8_mm_from_the_edges_of_a_plate_of_120_by_80(job):
    plan = plan_of(_counting(job, x_from="left", y_from="front", x_counts="right", y_counts="away"), "drill")
    mm = [(round(x * 1e3, 6), round(y * 1e3, 6)) for x, y in plan.points]
    assert sorted(mm) == [(8, 8), (8, 72), (112, 8), (112, 72)]
    assert plan.zero == (0, 0)


def test_from_the_other_corner_they_count_backwards(job):
    plan = plan_of(_counting(job, x_from="right", y_from="rear", x_counts="left", y_counts="near"), "drill")
    assert plan.zero == pytest.approx((plan.length, plan.width))
    assert all(0 < x < plan.length and 0 < y < plan.width for x, y in plan.points)


def test_a_step_without_places_has_no_picture(job):
    assert plan_of(job, "strap") is None
