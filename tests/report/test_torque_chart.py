"""What a spindle gives at each speed, as a chart: all of it in its frame, every cut numbered."""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import Ellipse, Line, Text
from jobsheet.report.torque_chart import torque_chart
from jobsheet.storage.card_files import find_card

CUTS = [("1 face", 560 / 60, 3.0), ("2 drill", 900 / 60, 1.5)]


@pytest.mark.parametrize("name", ["bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2"])
def test_nothing_stands_outside(name):
    drawing = torque_chart(find_card(name), CUTS, 400, 250)
    for item in drawing.items:
        if isinstance(item, Line):
            assert all(-1 <= x <= 401 and -1 <= y <= 251 for x, y in item.points)
        if isinstance(item, Ellipse):
            assert 0 <= item.x <= 400
            assert 0 <= item.y <= 250


def test_a_cut_at_a_higher_speed_lies_further_right_and_one_of_more_torque_higher():
    circles = [
        item
        for item in torque_chart(find_card("bench-mill-b-1"), CUTS, 400, 250).items
        if isinstance(item, Ellipse)
    ]
    assert len(circles) >= 2
    assert circles[0].x < circles[1].x
    assert circles[0].y < circles[1].y


def test_every_marked_speed_is_written():
    words = {
        item.words
        for item in torque_chart(find_card("bench-mill-b-1"), CUTS, 400, 250).items
        if isinstance(item, Text)
    }
    assert {"180", "560", "2300"} <= words
