"""How lines stand one under the other: by height, by step, and where what is dragged would be let go."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.gui.column.line import Line
from jobsheet.gui.column.standing import Standing, same_order
from jobsheet.gui.column.views import HeadingView, RowView


def _heading(key):
    return Line(HeadingView(key=key, number=1, title=key, holding="", zero=""))


def _row(key):
    return Line(RowView(key=key, number=10, icon="op-face", titles=(key,)))


def _standing(*keys):
    """Capitals are headings."""
    found = Standing()
    found.lines = [_heading(key) if key.isupper() else _row(key) for key in keys]
    found.place(lambda line: 40 if line.is_heading else 30)
    return found


PLAN = ("S", "a", "b", "T", "c")


def test_each_stands_under_the_one_before_and_says_once_that_it_moved():
    found = _standing(*PLAN)
    assert [(line.top, line.bottom) for line in found.lines] == [
        (0, 40),
        (40, 70),
        (70, 100),
        (100, 140),
        (140, 170),
    ]
    assert found.place(lambda line: 40 if line.is_heading else 30) == (170, False)
    assert found.place(lambda _: 30) == (150, True)


@pytest.mark.parametrize(
    ("y", "key"), [(0, "S"), (39, "S"), (40, "a"), (139, "T"), (169, "c"), (170, None), (-1, None)]
)
def test_a_height_belongs_to_one_line(y, key):
    line = _standing(*PLAN).at(y)
    assert (line.key if line is not None else None) == key


def test_between_two_heights_are_those_of_which_something_shows():
    found = _standing(*PLAN)
    assert [line.key for line in found.between(45, 105)] == ["a", "b", "T"]
    assert [line.key for line in found.between(-50, 10)] == ["S"]
    assert [line.key for line in found.between(500, 600)] == []
    assert list(Standing().between(0, 100)) == []


@pytest.mark.parametrize(
    ("y", "above", "below"), [(0, None, "S"), (1, "S", "T"), (100, "S", "T"), (101, "T", None)]
)
def test_the_heading_above_and_the_next_one(y, above, below):
    found = [line.key if line is not None else None for line in _standing(*PLAN).headings_around(y)]
    assert found == [above, below]


@pytest.mark.parametrize(
    ("here", "by", "rows_only", "there"),
    [
        ("a", 1, False, "b"),
        ("b", 1, False, "T"),
        ("b", 1, True, "c"),
        ("c", 5, False, "c"),
        ("S", -1, False, "S"),
        ("T", 1, True, "c"),
        ("T", -1, True, "b"),
        ("gone", 1, False, "S"),
        ("S", -1, True, "a"),
    ],
)
def test_a_step_stays_within_the_ends(here, by, rows_only, there):
    assert _standing(*PLAN).step(here, by, rows_only=rows_only) == there


def test_in_an_empty_list_there_is_nowhere_to_go():
    assert Standing().step("a", 1) == ""
    assert Standing().drop_place((), 10) == ("", 0, 0)


@pytest.mark.parametrize(
    ("dragged", "y", "place"),
    [
        ((), 0, ("S", 0, 40)),
        ((), 54, ("S", 0, 40)),
        ((), 56, ("S", 1, 70)),
        ((), 110, ("S", 2, 100)),
        ((), 125, ("T", 0, 140)),
        ((), 900, ("T", 1, 170)),
        (("a",), 90, ("S", 1, 100)),
    ],
)
def test_what_is_let_go_stands_after_the_row_whose_middle_it_passed(dragged, y, place):
    assert _standing(*PLAN).drop_place(dragged, y) == place


@given(st.lists(st.sampled_from("abcST"), unique=True), st.integers(-10, 300))
def test_wherever_it_is_let_go_the_index_is_within_its_set_up(keys, y):
    found = _standing(*keys)
    set_up, index, _ = found.drop_place((), y)
    if set_up:
        after = keys[keys.index(set_up) + 1 :]
        rows = next((at for at, key in enumerate(after) if key.isupper()), len(after))
        assert 0 <= index <= rows


def test_the_same_order_is_that_of_what_is_painted():
    assert same_order(_standing(*PLAN).lines, _standing(*PLAN).lines)
    assert not same_order(_standing("S", "a", "b").lines, _standing("S", "b", "a").lines)
