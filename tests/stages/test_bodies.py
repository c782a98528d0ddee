"""Solids that were let go are cut again, and are the very same metal."""

from __future__ import annotations

import gc

import numpy as np
import pytest

from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages import bodies
from jobsheet.stages.course import course_of
from jobsheet.stages.pictures import picture
from jobsheet.stages.solids import Modeller
from jobsheet.storage.job_file import read_job


@pytest.fixture(autouse=True)
def _nothing_held_yet(monkeypatch):
    """Solids of other tests count for nothing here."""
    monkeypatch.setattr(bodies, "_HELD", bodies._Held())


@pytest.fixture
def course():
    job = read_job(sample_jobs() / "hm-102-slide-plate.yaml")
    return course_of(job, Reckoner().reckon(job).settings)


def test_a_solid_that_was_let_go_is_cut_again_with_the_same_mesh_and_picture(course):
    kept = Modeller().stages(course)
    before = [(*(part.copy() for part in one.mesh()), picture(one, "iso", 100, 80)) for one in kept]
    again = Modeller().stages(course)
    for one in again:
        if not one.body.stays:
            one.body.let_go()
    for one, (points, triangles, fresh, drawing) in zip(reversed(again), reversed(before), strict=True):
        assert one.volume == pytest.approx(float(one.solid.volume()) / 1e9, rel=1e-12)
        for mine, theirs in zip(one.mesh(), (points, triangles, fresh), strict=True):
            assert np.array_equal(mine, theirs)
        assert picture(one, "iso", 100, 80) == drawing


def test_no_more_is_held_than_there_is_room_for(course, monkeypatch):
    whole = sum(one.body.weight for one in {one.body.mark: one for one in Modeller().stages(course)}.values())
    gc.collect()
    room = bodies.held() + whole // 3
    monkeypatch.setattr(bodies, "ROOM", room)
    stages = Modeller().stages(course)
    assert bodies.held() <= room
    gone = [one for one in stages if one.body._solid is None]
    assert gone
    assert all(one.solid is not None for one in gone)
    assert bodies.held() <= room


def test_what_is_thrown_away_counts_no_more(course):
    gc.collect()
    before = bodies.held()
    stages = Modeller().stages(course)
    assert bodies.held() > before
    del stages
    gc.collect()
    assert bodies.held() == before
