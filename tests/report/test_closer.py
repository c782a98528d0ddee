"""A crowd drawn larger: sizes of walls as a drawing gives them, every point and step by its number."""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import Line, Text
from jobsheet.report.pictured.closer import HALF, LARGEST, ROOM, closer_views, crowds_on
from jobsheet.report.pictured.near_walls import Outlined
from jobsheet.report.points import Point

MM = 1e-3
#: A plate of 100 by 60 on 120 points.
SCALE, SIZE = 1200.0, (100 * MM, 60 * MM)


def slot(step, y, wide=3.0, start=30.0, end=50.0):
    return Outlined(step=step, spine=((start * MM, y * MM), (end * MM, y * MM)), radius=wide / 2 * MM)


def point(number, x, y, diameter=2.5):
    at = (x * MM, y * MM)
    return Point(number=number, x=at[0], y=at[1], x_text="", y_text="", diameter=diameter * MM), at


def hole(step, x, y, diameter=2.5):
    return Outlined(step=step, spine=((x * MM, y * MM),), radius=diameter / 2 * MM, is_hole=True)


def views(cuts, points=(), crowded=(), units="mm"):
    crowds = crowds_on(cuts, crowded, SCALE, units)
    return crowds, closer_views(crowds, cuts, points, SIZE, SCALE, units)


def words(view):
    return {item.words for item in view.drawing.items if isinstance(item, Text)}


def test_the_wall_between_two_slots_has_its_size_and_each_slot_its_step():
    """3 wide and 4.5 apart leaves 1.5; on the small picture that is 1.8 points."""
    _, (view,) = views((slot(10, 20), slot(20, 24.5)))
    assert words(view) == {"1.5", "step 10", "step 20"}


def test_in_inches_it_is_said_in_inches():
    """A quarter wide and 0.3 apart: 0.05."""
    cuts = tuple(slot(step, y * 25.4, wide=0.25 * 25.4) for step, y in ((10, 1.0), (20, 1.3)))
    _, (view,) = views(cuts, units="in")
    assert "0.05" in words(view)


def test_a_wall_that_the_small_picture_shows_is_not_drawn_again():
    """10 of metal is 12 points."""
    assert views((slot(10, 20), slot(20, 33))) == ((), ())


def test_a_size_stands_in_its_wall_where_ten_times_larger_is_enough():
    _, (view,) = views((slot(10, 20), slot(20, 24.5)))
    (text,) = [item for item in view.drawing.items if isinstance(item, Text) and item.words == "1.5"]
    high = view.drawing.height / (view.high[1] - view.low[1])
    edges = sorted(view.drawing.height - (y * MM - view.low[1]) * high for y in (21.5, 23.0))
    assert edges[0] < text.y - 5 < text.y < edges[1]
    assert view.times <= LARGEST


def test_it_lies_inside_its_frame_and_in_its_room():
    """Slots of 90 are longer than the picture has room for at that scale: a part of them is shown."""
    for cuts, room in (
        ((slot(10, 20, start=5, end=95), slot(20, 23.6, start=5, end=95)), ROOM),
        ((slot(10, 10), slot(20, 13.6), slot(30, 40), slot(40, 43.6)), HALF),
    ):
        for view in views(cuts)[1]:
            assert view.drawing.width <= room[0] + 1e-6
            assert view.drawing.height <= room[1] + 1e-6
            for item in view.drawing.items:
                if isinstance(item, Line):
                    assert all(
                        -0.01 <= x <= view.drawing.width + 0.01 and -0.01 <= y <= view.drawing.height + 0.01
                        for x, y in item.points
                    )


def test_points_that_crowd_have_their_numbers_so_far_apart_that_each_is_read():
    points = tuple(point(number, 50, 20 + 3 * number) for number in (1, 2, 3))
    cuts = tuple(hole(40, 50, 20 + 3 * number) for number in (1, 2, 3))
    (crowd,), (view,) = views(cuts, points, (points,))
    assert crowd.numbers == view.numbers == {1, 2, 3}
    heights = {item.words: item.y for item in view.drawing.items if isinstance(item, Text)}
    assert heights["1"] - heights["2"] == pytest.approx(heights["2"] - heights["3"])
    assert heights["1"] - heights["2"] >= 12


def test_the_closest_come_first_and_two_have_room():
    cuts = tuple(
        slot(step + more, y + gap + 3 * more / 10, start=x, end=x + 10)
        for step, y, x, wall in ((10, 10, 5, 2.0), (30, 30, 40, 1.0), (50, 45, 80, 0.5))
        for more, gap in ((0, 0.0), (10, wall))
    )
    crowds, shown = views(cuts)
    assert len(crowds) == 3
    assert [words(view) & {"0.5", "1", "2"} for view in shown] == [{"0.5"}, {"1"}]
