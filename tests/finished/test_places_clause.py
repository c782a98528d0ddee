"""Where a feature lies: numbers with the face beside them, several places,
patterns in words and pitch circles.
"""

from __future__ import annotations

import math

import pytest

from jobsheet.errors import QuantityError
from jobsheet.finished.places_clause import coordinate, on_circle, places
from jobsheet.finished.scanned import Scanned

from .lines_typed import DATUMS


def read(clause, text):
    line, said = Scanned(text, "mm", DATUMS), {"what": "hole"}
    assert clause(line, said)
    return said, line


def test_places_stand_with_semicolons_between():
    said, line = read(places, "at 20, 15; 60, 15")
    assert [one.text for one in said["places"]] == ["20, 15", "60, 15"]
    assert line.done()


def test_a_number_may_have_its_face_and_its_limits():
    line = Scanned("40 ±0.05 from C, 22 from A", "mm", DATUMS)
    found = coordinate(line)
    assert found.far.value == pytest.approx(40e-3)
    assert found.either == pytest.approx(0.05e-3)
    assert found.face == "left"  # datum C of the tests
    assert coordinate(Scanned("from C", "mm", DATUMS)) is None


def test_a_pattern_in_words_is_spread_out():
    said, _ = read(places, "at row of 3 from 10, 10, step 15")
    assert [(one.x.value, one.y.value) for one in said["places"]] == [
        pytest.approx((x * 1e-3, 10e-3)) for x in (10, 25, 40)
    ]


def test_a_pitch_circle_with_its_middle_and_its_first_hole():
    said, _ = read(on_circle, "on PCD 60 around 50, 30, first at 30")
    circle = said["circle"] if "circle" in said else said["on_circle"]
    assert circle.diameter.value == pytest.approx(60e-3)
    assert circle.first == pytest.approx(math.radians(30))
    assert circle.middle.text == "50, 30"


def test_a_pitch_circle_has_a_size():
    with pytest.raises(QuantityError, match="above nought"):
        read(on_circle, "on PCD 0")


def test_places_are_said_once():
    line, said = Scanned("at 20, 15 at 30, 15", "mm", DATUMS), {"what": "hole"}
    assert places(line, said)
    line.gap()
    with pytest.raises(QuantityError):
        places(line, said)


def test_an_at_without_a_place_is_refused():
    with pytest.raises(QuantityError):
        read(places, "at")
