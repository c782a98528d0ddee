"""What a picture says in its first bytes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.storage.photos.picture_head import Head, head_of
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
