"""One line a feature: what is read, what is asked, and what half of a line is."""

from __future__ import annotations

import math

import pytest

from jobsheet.errors import QuantityError

from .lines_typed import read


def test_a_tapped_hole_with_its_hole_below():
    """ISO 15786 writes thread and hole with a slash: M10 x 25/30 (planning from a drawing, I57)."""
    found = read("M10 x 25/30 at 20, 20")
    assert found.what == "tapped hole"
    assert found.thread.pitch == pytest.approx(1.5e-3)  # ISO 261
    assert (found.depth.nominal, found.hole_depth.nominal) == pytest.approx((25e-3, 30e-3))


def test_four_threads_at_their_places():
    found = read("4 x M8 blind 16 at 20, 15; 60, 15; 60, 35; 20, 35")
    assert (found.count, found.depth.nominal) == (4, pytest.approx(16e-3))
    assert [point.text for point in found.places.points] == ["20, 15", "60, 15", "60, 35", "20, 35"]
    assert found.counted == ("left", "front")


def test_a_keyway_as_the_tables_have_it():
    """8 P9 is 7.949 to 7.985 (ISO 286-2), 4 +0.2 deep (DIN 6885)."""
    found = read("keyway 8 P9 x 4 +0.2, 32 long, shaft 25")
    assert (found.size.low * 1e3, found.size.high * 1e3) == pytest.approx((7.949, 7.985))
    assert (found.depth.low * 1e3, found.depth.high * 1e3) == pytest.approx((4.0, 4.2))
    assert found.shaft.nominal == pytest.approx(25e-3)


def test_places_count_from_the_faces_that_stand_beside_them():
    found = read("16 H7 through at 22 from A, 40 from C from front")
    assert (found.face, found.counted) == ("front", ("left", "bottom"))
    assert found.places.points[0].text == "40, 22"


def test_a_pitch_circle_begins_where_it_says():
    found = read("6 x M6 through on PCD 60, first at 30")
    assert found.count == 6
    assert found.circle.diameter.value == pytest.approx(60e-3)
    assert math.degrees(found.circle.first) == pytest.approx(30)


@pytest.mark.parametrize(
    ("text", "both"),
    [
        ("M10x1", ("M10x1 through", "M10 blind 1")),
        ("6 x 25", ("6 x 25 through", "hole 6 x 25")),
        ("slot 12 x 6 deep from left", ("from left edge", "from left face")),
        ("16 H7 through at 40, 22 from front", ("from front face", "from left")),
        ("1,000 through", ("1000", "1.000")),
    ],
)
def test_two_readings_are_answered_with_both(text, both):
    with pytest.raises(QuantityError, match="two ways") as caught:
        read(text)
    assert all(one in str(caught.value) for one in both)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("16 h7 through", "16 H7"),
        ("6.8 at 20, 15", "how deep"),
        ("M8 at 20, 15", "how deep"),
        ("window 50 x 30", "R5"),
        ("4 x 6.6 through at 10, 10; 20, 20", "2 places are"),
        ("6 through at 20", "two numbers"),
        ("6 through 5 deep", "take one out"),
        ("M10 blind 30/25", "25/30"),
        ("80 x 50 x 30", "line of the sizes"),
        ("6 through at 10, 10 from E, B", "no face"),
        ("6 through at 10, 10, 20, 20", "semicolons"),
        ("on PCD 60", "no feature"),
        ("M6 through on PCD 60", "how many"),
    ],
)
def test_what_is_missing_or_wrong_is_asked_in_one_sentence(text, says):
    with pytest.raises(QuantityError, match=says):
        read(text)
