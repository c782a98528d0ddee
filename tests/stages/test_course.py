"""What each step takes and where: from the zero to the drawing's axes, with the
work smaller for all that follows.
"""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.model.shape import Bevel, Hole, Slab
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages.course import Sized, course_of, is_through, moved, shapes_of, takes_away
from jobsheet.storage.job_file import read_job

PLATE = read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")


def course(job=PLATE):
    reckoned = Reckoner().reckon(job)
    return course_of(reckoned.job, reckoned.settings)


def test_a_layer_off_the_top_makes_the_work_lower_for_all_that_follows():
    """HM-100: 12 thick, 0.4 and 0.1 off."""
    cuts = {cut.key: cut for cut in course().cuts}
    assert cuts["face-rough"].before.size[2] == pytest.approx(12e-3)
    assert cuts["face-rough"].after.size[2] == pytest.approx(11.6e-3)
    assert cuts["drill"].before.size[2] == pytest.approx(11.5e-3)
    assert moved(cuts["face-rough"].before, cuts["drill"].before) == (0.0, 0.0)


def test_steps_are_counted_by_their_key_or_set_up():
    found = course()
    keys = [cut.key for cut in found.cuts]
    assert [found.after(key) for key in keys] == list(range(1, len(keys) + 1))
    assert found.after("set-up-1") == len(keys)
    assert found.after("no such") == 0


def test_what_makes_the_same_solid_has_the_same_fingerprint():
    one, other = course(), course(SetField("drill", "feed", "0.05").apply(PLATE))
    assert [cut.fingerprint for cut in one.cuts] == [cut.fingerprint for cut in other.cuts]
    moved_holes = course(SetField("drill", "at", "20, 20").apply(PLATE))
    assert [cut.fingerprint for cut in one.cuts] != [cut.fingerprint for cut in moved_holes.cuts]


def test_a_shape_goes_through_where_it_ends_at_or_below_the_bottom():
    hole = Hole(0, 0, 5e-3, None)
    assert is_through(Sized(shape=hole), 0.012)
    assert is_through(Sized(shape=hole, depth=0.012), 0.012)
    assert not is_through(Sized(shape=hole, depth=0.011), 0.012)
    assert is_through(Sized(shape=hole, depth=0.008, top=0.004), 0.012)


def test_a_thread_is_drawn_and_takes_nothing():
    assert takes_away(Slab(1e-3))
    assert not takes_away(Hole(0, 0, 6e-3, None, threaded=True))
    assert not takes_away(Bevel(0.0))
    reckoned = Reckoner().reckon(PLATE)
    assert shapes_of(reckoned.job.find("clamp")[1], reckoned.settings) == ()
