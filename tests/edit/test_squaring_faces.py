"""Which faces are squared in which order, and what comes off each."""

from __future__ import annotations

import pytest

from jobsheet.edit.squaring_faces import axis_of, faces_of, sizes_of
from jobsheet.errors import CommandError
from jobsheet.model.lying import OPPOSITE

from .blocks_squared import block, typed


def test_the_largest_face_comes_first_and_the_ends_last():
    """64 × 45 × 30: the largest is 64 × 45, at top and bottom; the ends of 64 are the smallest."""
    faces = faces_of(block())
    assert (axis_of(faces.first), axis_of(faces.side), axis_of(faces.end)) == (2, 1, 0)
    turned = faces_of(block(30, 40, 150))
    assert axis_of(turned.end) == 2


def test_a_datum_goes_before_the_face_opposite_it():
    assert faces_of(block(datums=(("A", "bottom"),))).first == "bottom"
    assert faces_of(block(datums=(("A", "top"),))).first == "top"


@pytest.mark.parametrize("face", ["left", "front", "top"])
def test_both_faces_of_a_size_share_what_comes_off(face):
    """64 to 60: two off each."""
    sizes = sizes_of(block(), typed())
    axis = axis_of(face)
    whole = sizes.stock[axis] - sizes.size[axis].nominal
    assert sum(sizes.off(face)) == pytest.approx(whole)
    assert sizes.off(face) == sizes.off(OPPOSITE[face])
    assert sizes.off(face)[0] == pytest.approx(whole / 2, abs=0.005e-3)


def test_general_limits_are_assumed_and_said_where_none_are_written():
    """ISO 2768-1 m: 60 ±0.3, 25 ±0.2."""
    sizes = sizes_of(block(), typed())
    assert sizes.assumed
    assert (sizes.size[0].low, sizes.size[0].high) == pytest.approx((59.7e-3, 60.3e-3))
    assert sizes_of(block(), typed("60 ±0.05", "40 ±0.05", "25 ±0.05")).assumed == ()


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"length": "64"}, "length"),
        ({"width": "50"}, "width"),
        ({"height": "x"}, "height"),
        ({"height": ""}, "height"),
    ],
)
def test_a_size_that_leaves_nothing_or_cannot_be_read_is_named(change, says):
    with pytest.raises(CommandError, match=says):
        sizes_of(block(), {**typed(), **change})
