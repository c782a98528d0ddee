"""What a whole line says: a face and its axes where nothing is said, what is missing is
asked, two readings are both told.
"""

from __future__ import annotations

import pytest

from jobsheet.errors import QuantityError
from jobsheet.finished.feature_line import read_feature
from jobsheet.finished.settled import AXES, AXIS, ENDS, datum_end

from .lines_typed import DATUMS


def test_the_axes_of_a_face_are_the_two_that_it_does_not_face_along():
    for face, axes in AXES.items():
        assert AXIS[face] not in axes
        assert sorted((AXIS[face], *axes)) == [0, 1, 2]
    assert {face for pair in ENDS for face in pair} == set(AXES)


def test_places_count_from_the_datums_else_from_left_front_and_bottom():
    assert read_feature("6 through at 20, 15", "mm", DATUMS).counted == ("left", "front")
    assert read_feature("6 through at 20, 15", "mm", (("A", "right"),)).counted == ("right", "front")
    assert read_feature("6 through at 20, 15", "mm").counted == ("left", "front")
    assert read_feature("6 through at 20, 15 from front face", "mm").counted == ("left", "bottom")


def test_a_letter_on_both_ends_of_an_axis_settles_nothing():
    assert datum_end(("left",), 0) == "left"
    assert datum_end(("left", "right"), 0) == ""
    assert datum_end(("front",), 0) == ""


@pytest.mark.parametrize(
    "text",
    [
        "6.8 at 20, 15",
        "M8 at 20, 15",
        "slot 12 from left edge",
        "pocket 30 x 20 at 40, 25",
        "keyway 8 P9, 32 long, shaft 25",
    ],
)
def test_a_depth_that_is_needed_is_asked(text):
    with pytest.raises(QuantityError, match="deep"):
        read_feature(text, "mm", DATUMS)


def test_as_many_places_as_are_counted():
    assert read_feature("2 x 6 through at 20, 15; 60, 15", "mm", DATUMS).count == 2
    with pytest.raises(QuantityError, match="2 places are"):
        read_feature("4 x 6 through at 20, 15; 60, 15", "mm", DATUMS)
