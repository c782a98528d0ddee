"""Sizes and names beside the picture of the finished part: longer texts get more room, each name its line."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.drawing.drawn import Line, Text
from jobsheet.finished.finished_part import finished_part
from jobsheet.model.finished import Finished
from jobsheet.report.asked_sizes import LETTER, asked_items, named_items, room_for
from jobsheet.report.isometric import fitted
from jobsheet.storage.job_file import blank_job

BOX = ((0.0, 0.08), (0.0, 0.05), (0.0, 0.03))


def part(*features, sizes="80 x 50 x 30 ±0.1"):
    return finished_part(
        replace(blank_job("bench-mill-b-1"), finished=Finished(sizes=sizes, features=features))
    )


def test_a_longer_size_has_more_room_beside_the_picture():
    short, long = room_for(part(sizes="80 x 50 x 30")), room_for(part(sizes="80 x 50 x 30.125 ±0.025"))
    assert long[2] > short[2]
    assert (long[0], long[1], long[3]) == (short[0], short[1], short[3])


def test_sizes_stand_there_as_they_were_typed_and_features_by_their_names():
    drawn = part("16 H7 through at 40, 25")
    view = fitted(BOX, 300, 200, room_for(drawn))
    words = [item.words for item in asked_items(view, drawn, BOX, 300) if isinstance(item, Text)]
    assert {"80", "50", "30 ±0.1"} <= set(words)
    assert any("16 H7" in word for word in words)


def test_names_stand_one_below_the_other_the_highest_place_first():
    items = named_items([("low", (10.0, 90.0)), ("high", (10.0, 20.0))], 200)
    texts = [item for item in items if isinstance(item, Text)]
    assert [one.words for one in texts] == ["high", "low"]
    assert texts[0].y < texts[1].y
    assert all(one.x + LETTER * len(one.words) <= 200 for one in texts)
    assert sum(isinstance(item, Line) for item in items) == 2
