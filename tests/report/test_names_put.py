"""Words in a drawing: in their place, else beside it with a line, none over another, none outside."""

from __future__ import annotations

from jobsheet.drawing.drawn import Line, Text
from jobsheet.report.pictured.cut_off import Frame
from jobsheet.report.pictured.names_put import Names

FRAME = Frame(left=0.0, low=0.0, wide=200.0, high=100.0, scale=1.0)


def texts(items):
    return [item for item in items if isinstance(item, Text)]


def lines(items):
    return [item for item in items if isinstance(item, Line) and not item.closed]


def test_words_stand_in_the_middle_of_their_place():
    items = Names(FRAME).put((100.0, 50.0), "1.5")
    (text,) = texts(items)
    assert (text.words, text.x, text.anchor) == ("1.5", 100.0, "middle")
    assert 48 < text.y < 56
    assert not lines(items)


def test_the_second_at_the_same_place_stands_beside_it_with_a_line_to_it():
    names = Names(FRAME)
    (first,) = texts(names.put((100.0, 50.0), "1.5"))
    items = names.put((100.0, 50.0), "2.25")
    (second,) = texts(items)
    (line,) = lines(items)
    assert line.points[0] == (100.0, 50.0)
    assert abs(second.y - first.y) > 7 or abs(second.x - first.x) > 15


def test_what_is_too_thin_for_its_size_has_it_beside():
    items = Names(FRAME).put((100.0, 50.0), "0.25", aside=True)
    assert len(lines(items)) == 1
    assert texts(items)[0].y != 50.0


def test_outside_and_where_nothing_is_free_there_are_none():
    names = Names(FRAME)
    assert names.put((300.0, 50.0), "1.5") == []
    small = Names(Frame(left=0.0, low=0.0, wide=10.0, high=10.0, scale=1.0))
    assert small.put((5.0, 5.0), "step 10, 20, 30") == []
