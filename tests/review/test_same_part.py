"""Whether the part is the same after a change: by the shapes that are cut, and by the metal that differs."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.mending.same_part import TOLERANCE, _near, elsewhere, same_course
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


@pytest.mark.parametrize("axis", range(3))
@pytest.mark.parametrize(
    ("low", "high", "near"), [(0, 1, True), (1, 2, True), (-1, 0, True), (1.1, 2, False), (-2, -0.1, False)]
)
def test_boxes_are_near_where_they_meet_along_all_three_axes(axis, low, high, near):
    one, other = [0.0, 0.0, 0.0, 1.0, 1.0, 1.0], [0.2, 0.2, 0.2, 0.8, 0.8, 0.8]
    other[axis], other[axis + 3] = low, high
    assert _near(one, other) is near
    assert _near(other, one) is near


def test_both_what_is_more_and_what_is_less_counts():
    """A hole of ⌀5 through the plate, 5 mm off its place: as much is missing as is left."""
    before = reckoned(sample(100))
    fewer = reckoned(
        SetField("clamp", "note", "x").apply(DeleteSteps(("drill", "spot", "tap")).apply(sample(100)))
    )
    off = elsewhere(before, fewer, ())
    assert off > 100
    assert elsewhere(fewer, before, ()) == pytest.approx(off)
