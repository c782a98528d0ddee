"""A remark's fixes, the one that is preferred first."""

from __future__ import annotations

from jobsheet.model.remark import SEVERITIES, Fix, Remark


def remark(**more):
    return Remark(rule="x", severity="habit", message="", why="", **more)


def test_fixes_stand_in_the_order_in_which_they_are_tried():
    one, other = Fix("one", lambda job: job), Fix("other", lambda job: job)
    assert remark(fix=one, others=(other,)).fixes == (one, other)
    assert remark(fix=one).fixes == (one,)
    assert remark(others=(other,)).fixes == (other,)
    assert remark().fixes == ()


def test_what_hurts_goes_before_what_spoils_and_that_before_a_habit():
    assert SEVERITIES == ("hazard", "scrap", "rework", "habit")
