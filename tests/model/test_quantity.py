"""Values that keep their spelling: the same only where number and spelling agree."""

from __future__ import annotations

import math

from jobsheet.model.quantity import (
    SAME_PLACE,
    Depth,
    Measured,
    Pattern,
    Place,
    Places,
    Quantity,
    Several,
    Size,
    spot,
)


def at(x, y):
    return Place(Quantity(x / 1000, f"{x}"), Quantity(y / 1000, f"{y}"))


def test_another_spelling_is_another_value():
    assert Quantity(25.4e-3, "1 in") != Quantity(25.4e-3, "25.4 mm")
    assert Quantity(25.4e-3, "1 in") == Quantity(25.4e-3, "1 in")


def test_a_depth_without_a_number_goes_through():
    assert Depth(None, "through").through
    assert not Depth(0.0, "0").through


def test_a_pattern_is_spread_out_where_it_stands():
    pattern = Pattern((at(1, 1), at(2, 1)), "row of 2 from 1, 1, step 1")
    places = Places((at(0, 0), pattern, at(9, 9)))
    assert [one.text for one in places] == ["0, 0", "1, 1", "2, 1", "9, 9"]
    assert len(places) == 4
    assert places.text == "0, 0; row of 2 from 1, 1, step 1; 9, 9"
    assert not Places(())


def test_places_are_one_within_a_micrometre():
    assert spot(0.02, 0.03) == spot(0.02 + SAME_PLACE / 4, 0.03 - SAME_PLACE / 4)
    assert spot(0.02, 0.03) != spot(0.02 + 2 * SAME_PLACE, 0.03)
    third = 1 / 3
    assert at(third * 3, 0).spot == at(1, 0).spot
    assert spot(0.1 + 0.2, 0) == spot(math.fsum((0.1, 0.2)), 0)


def test_what_is_measured_says_its_size_alone_and_what_is_asked_where_there_is_none():
    whole = Measured(25e-3, 24.95e-3, 25.05e-3, "25 ±0.05, micrometer", size="25 ±0.05")
    assert (whole.said, whole.sized) == ("25 ±0.05", True)
    square = Measured(0, 0, 0, "square 0.02 to A", asks=(("square", 2e-5, "A"),))
    assert (square.said, square.sized) == ("square 0.02 to A", False)
    assert Size(0.02, 0.02, 0.02, "20").said == "20"


def test_some_of_a_few_words():
    some = Several(("rear", "left"), "rear, left")
    assert "left" in some
    assert "front" not in some
    assert list(some) == ["rear", "left"]
    assert len(some) == 2
