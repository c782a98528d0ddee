"""Drawings as values: the same by value, with weights and dashes that every painter knows."""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import DASHES, WEIGHTS, Drawing, Ellipse, Line, Photo, Text


def test_what_is_drawn_alike_is_equal_and_hashes_alike():
    one, other = (
        Drawing(
            10, 10, (Line(((0, 0), (1, 1))), Ellipse(2, 2, 1, 1), Text(1, 1, "a"), Photo(0, 0, 1, 1, "x"))
        )
        for _ in range(2)
    )
    assert one == other
    assert hash(one) == hash(other)
    assert Line(((0, 0), (1, 1))) != Line(((0, 0), (1, 1)), dash="pencil")


def test_nothing_drawn_can_be_changed():
    with pytest.raises(AttributeError):
        Line(((0, 0), (1, 1))).ink = "red"


def test_an_outline_is_thinner_than_a_cut_and_thicker_than_a_dimension():
    """ISO 128: wide and narrow lines are as two to one."""
    assert WEIGHTS["cut"] >= 2 * WEIGHTS["outline"] > 0
    assert WEIGHTS["outline"] >= 2 * WEIGHTS["thin"]
    assert Line(()).weight in WEIGHTS
    assert all(len(one) % 2 == 0 and min(one) > 0 for one in DASHES.values())
