"""What a picture says in its first bytes."""

from __future__ import annotations

import struct

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.storage.photos.picture_head import MOST_TAGS, Head, head_of, orientation_of
from tests.photographs_made import jpeg_that_says, photograph, png_that_says


@pytest.mark.parametrize(
    ("raw", "head"),
    [
        (photograph(640, 480), Head("jpg", 640, 480)),
        (photograph(33, 77, "PNG"), Head("png", 33, 77)),
        (photograph(640, 480, orientation=3), Head("jpg", 640, 480)),
        (photograph(640, 480, orientation=6), Head("jpg", 480, 640)),
        (jpeg_that_says(65_000, 65_000), Head("jpg", 65_000, 65_000)),
        (b"", None),
        (b"\xff\xd8\xff", None),
        (b"\xff\xd8\xff\xe0\xff\xff", None),
        (b"GIF89a", None),
        (b"%PDF-1.7", None),
        (png_that_says(0, 5), None),
    ],
)
def test_the_head_of_a_picture_says_its_kind_and_points(raw, head):
    assert head_of(raw) == head


@given(
    st.binary(max_size=400),
    st.sampled_from([b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"\xff\xd8\xff\xe1\x00\x20Exif\0\0II"]),
)
def test_no_bytes_at_all_break_the_reading_of_a_head(rest, start):
    head_of(start + rest)


def exif(orientation, order, before=0):
    """A segment with so many other tags before the one that says how it was held (TIFF 6.0, section 2)."""
    sign = "<" if order == b"II" else ">"
    tag = struct.pack(f"{sign}HHIHH", 0x010F, 3, 1, 7, 0)
    held = struct.pack(f"{sign}HHIHH", 0x0112, 3, 1, orientation, 0)
    return b"Exif\0\0" + order + struct.pack(f"{sign}HIH", 42, 8, before + 1) + tag * before + held


@pytest.mark.parametrize("order", [b"II", b"MM"])
def test_how_the_camera_was_held_is_one_to_eight(order):
    """Exif 2.3: 1 is upright, 8 the last there is; what is none of them is read as upright."""
    found = [orientation_of(exif(number, order)) for number in (0, 1, 2, 5, 8, 9, 600)]
    assert found == [1, 1, 2, 5, 8, 1, 1]


def test_it_is_found_among_as_many_tags_as_are_looked_at():
    assert orientation_of(exif(6, b"MM", MOST_TAGS - 1)) == 6
    assert orientation_of(exif(6, b"MM", MOST_TAGS)) == 1


@pytest.mark.parametrize(
    "raw", [b"", b"Exif\0\0", b"Exif\0\0XX", b"http://ns.adobe.com/xap", exif(6, b"II")[:-6]]
)
def test_what_says_nothing_of_it_is_upright(raw):
    assert orientation_of(raw) == 1


@pytest.mark.parametrize(
    ("orientation", "size"), [(4, (64, 48)), (5, (48, 64)), (7, (48, 64)), (8, (48, 64))]
)
def test_from_five_on_a_picture_lies_on_its_side(orientation, size):
    assert head_of(photograph(64, 48, orientation=orientation)) == Head("jpg", *size)
