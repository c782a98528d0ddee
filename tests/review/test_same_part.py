"""Whether the part is the same after a change: by the shapes that are cut, and by the metal that differs."""

from __future__ import annotations

from jobsheet.edit.commands import SetField
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.mending.same_part import TOLERANCE, elsewhere, same_course
from jobsheet.stages.course import course_of

from .views_read import sample


def reckoned(job):
    return Reckoner().reckon(job)


def test_a_feed_changes_no_shape_and_a_depth_does():
    before = reckoned(sample(100))
    course = course_of(before.job, before.settings)
    feed = reckoned(SetField("drill", "feed", "0.05").apply(sample(100)))
    assert same_course(course, course_of(feed.job, feed.settings))
    moved = reckoned(SetField("drill", "at", "20, 20").apply(sample(100)))
    assert not same_course(course, course_of(moved.job, moved.settings))


def test_metal_that_differs_where_the_change_is_about_does_not_count():
    """Four holes of M6 moved to one place: what differs lies in what drill, spot and tap pass through."""
    before, after = reckoned(sample(100)), reckoned(SetField("drill", "at", "20, 20").apply(sample(100)))
    assert elsewhere(before, before, ()) == 0.0
    assert elsewhere(before, after, ("drill",)) <= elsewhere(before, after, ())
    assert elsewhere(before, after, ("drill", "spot", "tap")) <= TOLERANCE
