"""What stands between table and spindle nose, to scale."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.drawing.drawn import Line, Text
from jobsheet.reckoning.answers.all_answers import Headroom
from jobsheet.report.headroom_view import headroom_picture

ROOM = Headroom(
    top=0.100, holder=0.060, stick_out=0.040, room=0.010, least=0.080, greatest=0.300, bed=0.060, work=0.030
)


def points(drawing):
    return [point for item in drawing.items if isinstance(item, Line) for point in item.points]


@pytest.mark.parametrize("top", [0.05, 0.1, 0.2, 0.35])
@pytest.mark.parametrize("units", ["mm", "in"])
def test_everything_stays_in_its_picture(top, units):
    drawing = headroom_picture(replace(ROOM, top=top), units, 260, 220)
    assert (drawing.width, drawing.height) == (260, 220)
    for x, y in points(drawing):
        assert -1 <= x <= 261
        assert -1 <= y <= 221


def test_sizes_are_in_the_units_of_the_job():
    words = {
        units: " ".join(
            item.words for item in headroom_picture(ROOM, units, 260, 220).items if isinstance(item, Text)
        )
        for units in ("mm", "in")
    }
    assert "300" in words["mm"]
    assert "11.8" in words["in"]


def test_higher_work_is_drawn_higher():
    low, high = (
        min(
            y
            for _, y in points(headroom_picture(replace(ROOM, top=top, bed=None, work=0.03), "mm", 260, 220))
        )
        for top in (0.06, 0.2)
    )
    assert low <= 221
    assert high <= 221
