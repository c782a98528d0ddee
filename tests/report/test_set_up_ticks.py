"""Boxes to tick at their moment, twelve at most."""

from __future__ import annotations

from jobsheet.report.heed.set_up_ticks import MOST, at_the_end, before, seated, strapping
from jobsheet.storage.job_file import read_job
from tests.report.seen_from_above import plan_of


def test_ticks_of_a_set_up_are_twelve_at_most_and_none_is_cut_off(sample):
    """Issue 17: at most twelve beside steps and layers. What is ticked once for
    the whole job stands on the cover.
    """
    plan = plan_of(sample)
    for course in plan.courses:
        ticks = (*before(plan, course.set_up), *at_the_end(plan, course.set_up))
        assert len(ticks) <= MOST == 12
        assert len(set(ticks)) == len(ticks)


def test_nothing_of_the_end_stands_before_cutting_and_nothing_is_felt_for_that_is_not_yet_held(sample):
    plan = plan_of(sample)
    for course in plan.courses:
        first = before(plan, course.set_up)
        assert not set(first) & set(at_the_end(plan, course.set_up))
        assert (seated(plan, course.set_up).split(";")[0] in first) is not bool(strapping(course.set_up))


def test_the_vice_is_wiped_only_where_there_is_one(samples):
    plan = plan_of(read_job(samples / "hm-104-cover-plate.yaml"))
    (course,) = plan.courses
    assert not any("vice" in words for words in before(plan, course.set_up))
    assert any("wiped" in words for words in before(plan, course.set_up))
