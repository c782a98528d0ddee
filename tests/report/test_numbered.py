"""Every point has its number, however near the holes stand."""

from __future__ import annotations

import math

import pytest

from jobsheet.drawing.drawn import Ellipse, Line, Text
from jobsheet.report.blocks import Columns, Picture
from jobsheet.report.pictured.numbered import LEAST, crowds, detail, numbered, on_their_points
from jobsheet.report.points import Point
from tests.report.plans import drill, job, pages

from .seen_from_above import MM


def points_at(places, diameter=5.0):
    made = tuple(
        Point(number=number, x=x, y=y, x_text=str(x), y_text=str(y), diameter=diameter * MM)
        for number, (x, y) in enumerate(places, 1)
    )
    return made, {one.number: (one.x, one.y) for one in made}


def clear(items):
    texts = [item for item in items if isinstance(item, Text) and item.words.isdigit()]
    for index, one in enumerate(texts):
        for other in texts[index + 1 :]:
            wide = LEAST * 0.5 * max(len(one.words), len(other.words))
            assert abs(one.x - other.x) >= wide or abs(one.y - other.y) >= LEAST * 0.6, (one, other)
    return texts


def test_every_point_far_from_the_others_has_its_number_and_no_number_meets_another():
    made, spots = points_at([(20 * x, 20 * y) for x in range(6) for y in range(4)])
    items, left_out = numbered(made, spots, 1e3)
    assert left_out == []
    texts = clear(items)
    assert [item.words for item in texts] == [str(one.number) for one in made]
    assert min(item.size for item in texts) >= 7


def test_points_that_crowd_are_drawn_larger_with_all_their_numbers():
    """Nine holes on a grid of 8, and one far away: only the nine are in the detail,
    larger, and each has its number there.
    """
    grid = [(50 + 8 * x, 50 + 8 * y) for y in range(3) for x in range(3)]
    made, spots = points_at([*grid, (150, 20)], diameter=3)
    _, left_out = numbered(made, spots, 1e3)
    assert left_out
    (crowd,) = crowds(made, spots, left_out)
    assert [one.number for one in crowd] == list(range(1, 10))
    items, shown = detail(crowd, spots, "detail a", (0, 0), 1e3, 90)
    texts = clear(items)
    assert sorted(item.words for item in texts) == [str(number) for number in range(1, 10)]
    assert all(shown[0] < x < shown[2] and shown[1] < y < shown[3] for x, y in grid)
    (words,) = [item.words for item in items if isinstance(item, Text) and "larger" in item.words]
    assert float(words.split()[2]) > 1


@pytest.mark.parametrize("count", [3, 6, 60])
@pytest.mark.parametrize("apart", [1.5, 8.0])
def test_no_point_is_without_its_number_however_near_the_holes_stand(count, apart):
    """On the sheet of the set-up or on its card: each number stands once beside its point, in a detail or in the
    picture below that draws a crowd larger.
    """
    places = [(2 + apart * (index % 9), 2 + apart * (index // 9)) for index in range(count)]
    numbers: set[int] = set()
    for page in pages(job([drill(10, places, cutter="drill 1.0, drawer 3")])).pages:
        for block in page.blocks:
            parts = block.parts if isinstance(block, Columns) else ((block,),)
            for picture in (one for part in parts for one in part if isinstance(one, Picture)):
                texts = [
                    item for item in picture.drawing.items if isinstance(item, Text) and item.words.isdigit()
                ]
                numbers |= {int(item.words) for item in texts}
                assert all((item.size or 9) >= 7 for item in texts)
    assert set(range(1, count + 1)) <= numbers


def nearest(items, spots):
    """For every number that is drawn the point that it is read as: the one at the end of its line, else the nearest."""
    read = {}
    for place, item in enumerate(items):
        if isinstance(item, Text) and item.words.isdigit():
            line = items[place - 2] if place > 1 else None
            led = isinstance(line, Line) and len(line.points) == 2 and line.points[1][0] == item.x
            x, y = line.points[0] if led else (item.x, item.y - item.size * 0.36)  # the middle of a figure
            read[int(item.words)] = min(spots, key=lambda number: math.dist(spots[number], (x, y)))
    return read


def test_a_number_beside_a_crowd_is_read_as_that_of_its_own_point():
    """Three holes over one another, 5 apart: the first is the lowest, and its number is nowhere nearer to another."""
    made, spots = points_at([(50, 60), (50, 55), (50, 50)], diameter=2.5)
    items, over = numbered(made, spots, 1e3, all_of=True)
    items += on_their_points(over, spots)
    assert nearest(items, spots) == {1: 1, 2: 2, 3: 3}
    clear(items)


def test_numbers_that_have_no_room_on_their_points_are_led_to_them_and_none_lies_over_another():
    made, spots = points_at([(50, 50), (53, 50), (56, 50), (53, 53)], diameter=2)
    items = on_their_points(list(made), spots)
    assert nearest(items, spots) == {1: 1, 2: 2, 3: 3, 4: 4}
    assert len(clear(items)) == 4


def test_a_point_that_has_its_number_elsewhere_has_only_its_sign_here():
    made, spots = points_at([(50, 50), (90, 50)])
    items, left_out = numbered(made, spots, 1e3, without=frozenset((2,)))
    assert left_out == []
    assert [item.words for item in items if isinstance(item, Text)] == ["1"]
    assert sum(isinstance(item, Ellipse) for item in items) == 2
