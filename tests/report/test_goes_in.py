"""Where a cutter goes down into a pocket: the hole that was drilled for it, inside the pocket."""

from __future__ import annotations

from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.paths import sample_jobs
from jobsheet.report.rows.goes_in import entries
from jobsheet.storage.job_file import read_job

from .plans import plate
from .seen_from_above import plan_of

COVER = read_job(sample_jobs() / "hm-104-cover-plate.yaml")


def found(job):
    plan = plan_of(job)
    return [entry for course in plan.courses for entry in entries(plan, course)]


def test_the_window_of_the_cover_plate_is_entered_once_inside_it():
    """HM-104 drills a hole for the cutter that clears the window."""
    (entry,) = found(COVER)
    assert entry.step == COVER.find("window")[1].number
    for at, middle, half in zip((entry.point.x, entry.point.y), entry.middle, entry.half, strict=True):
        assert abs(at - middle) < half


def test_without_the_hole_and_without_a_pocket_there_is_none():
    holes = tuple(
        one.key for _, one in COVER.operations() if one.kind in ("drill", "spot-drill", "plunge", "enlarge")
    )
    assert found(DeleteSteps(holes).apply(COVER)) == []
    assert found(plate()) == []
