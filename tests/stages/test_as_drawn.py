"""Where the features of a drawing lie on the part: counted from the faces that a place names."""

from __future__ import annotations

import pytest

from jobsheet.finished.feature_line import read_feature
from jobsheet.finished.settled import AXIS
from jobsheet.stages.as_drawn import lie_for, places_on, point_on

BOX = ((0.0, 0.08), (0.0, 0.05), (0.0, 0.03))


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("6 through at 20, 15", (20, 15, 30)), ("hole 6 x 10 at 20, 15 from bottom face", (20, 15, 0)), ("6 through at 20, 15 from front face", (20, 0, 15)),
        ("6 through at 20, 15 from right, rear", (60, 35, 30)),
    ],
)  # fmt: skip
def test_a_place_counts_from_the_faces_that_it_names(text, expected):
    (found,) = places_on(read_feature(text, "mm"), BOX)
    assert [round(one * 1e3, 6) for one in found] == list(expected)


def test_a_pitch_circle_lies_round_its_middle():
    """Six on 60 round 40, 25, the first at 0°: 70, 25 and its opposite 10, 25."""
    found = places_on(read_feature("6 x M6 through on PCD 60 around 40, 25", "mm"), BOX)
    assert len(found) == 6
    assert [round(one * 1e3, 6) for one in found[0]] == [70, 25, 30]
    assert [round(one * 1e3, 6) for one in found[3]] == [10, 25, 30]


def test_a_feature_without_a_place_lies_nowhere():
    assert places_on(read_feature("6 through", "mm"), BOX) == ()


@pytest.mark.parametrize("face", ["top", "bottom", "front", "rear", "left", "right"])
def test_a_face_lies_up_for_its_own_features(face):
    assert lie_for(face, BOX).up == face
    feature = read_feature(f"hole 6 x 5 at 10, 10 from {face} face", "mm")
    point = point_on(feature, BOX, (0.01, 0.01))
    assert point[AXIS[face]] in BOX[AXIS[face]]
