"""What of an outline lies on a picture: closed forms on paper."""

from __future__ import annotations

import pytest

from jobsheet.report.pictured.cut_off import Frame, cut_off

#: From 10, 20 on the work, 30 by 20 of it, two points a unit.
FRAME = Frame(left=10.0, low=20.0, wide=60.0, high=40.0, scale=2.0)


def test_a_place_of_the_work_counts_up_and_the_page_counts_down():
    assert FRAME.at((10.0, 20.0)) == (0.0, 40.0)
    assert FRAME.at((40.0, 40.0)) == (60.0, 0.0)
    assert FRAME.ends == (40.0, 40.0)


def test_an_outline_inside_comes_whole():
    (line,) = cut_off(FRAME, ((15.0, 25.0), (25.0, 25.0), (25.0, 30.0)))
    assert line.points == ((10.0, 30.0), (30.0, 30.0), (30.0, 20.0), (10.0, 30.0))


def test_one_outside_leaves_nothing():
    assert not list(cut_off(FRAME, ((0.0, 0.0), (5.0, 0.0), (5.0, 50.0), (0.0, 50.0))))
    assert not list(cut_off(FRAME, ((0.0, 60.0), (90.0, 60.0))))


def test_what_crosses_the_frame_ends_at_it():
    """The right side of a box round half of the picture: one stroke from the lower edge to the upper one."""
    lines = list(cut_off(FRAME, ((0.0, 0.0), (25.0, 0.0), (25.0, 90.0), (0.0, 90.0))))
    assert [line.points for line in lines] == [((30.0, 40.0), (30.0, 0.0))]


def test_a_slope_is_cut_where_it_meets_the_frame():
    """From 0, 20 on the page one down for two across: it leaves the lower edge at 40."""
    (line, *_) = cut_off(FRAME, ((0.0, 35.0), (50.0, 10.0), (50.0, 0.0), (0.0, 0.0)))
    assert line.points[0] == pytest.approx((0.0, 20.0))
    assert line.points[-1] == pytest.approx((40.0, 40.0))
