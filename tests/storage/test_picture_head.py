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


def jpeg(*segments):
    """The first bytes of a JPEG with these segments, and its picture behind them (ITU-T T.81, B.1)."""
    return b"\xff\xd8" + b"".join(segments) + b"\xff\xd9"


def frame(marker, width, height):
    """A frame header: its length, eight bits a sample, lines, points in a line, one component (T.81, B.2.2)."""
    return b"\xff" + bytes([marker]) + struct.pack(">HBHHB", 11, 8, height, width, 1) + b"\x01\x11\x00"


def segment(marker, body):
    return b"\xff" + bytes([marker]) + struct.pack(">H", len(body) + 2) + body


@pytest.mark.parametrize("marker", [0xC0, 0xC1, 0xC2, 0xC3, 0xC5, 0xC9, 0xCF])
def test_every_frame_header_says_the_size(marker):
    """T.81, table B.1: SOF0 to SOF15."""
    assert head_of(jpeg(frame(marker, 640, 480))) == Head("jpg", 640, 480)


@pytest.mark.parametrize("marker", [0xC4, 0xC8, 0xCC, 0xDB, 0xE0, 0xFE])
def test_what_is_no_frame_header_is_gone_over(marker):
    """T.81, table B.1: DHT, JPG and DAC among the SOFs, and segments of other things."""
    other = segment(marker, struct.pack(">BHH", 8, 7, 9) + b"\0\0")
    assert head_of(jpeg(other, frame(0xC0, 640, 480))) == Head("jpg", 640, 480)


@pytest.mark.parametrize("alone", [b"\xff\x01", b"\xff\xd0", b"\xff\xd7", b"\xff", b"\xff\xff\xff"])
def test_markers_that_stand_alone_and_filling_bytes_have_no_length(alone):
    """T.81, B.1.1.2 and B.1.1.3: any marker may be preceded by FF; TEM and RST have no parameters."""
    start = segment(0xFE, b"a")
    assert head_of(jpeg(start, alone, frame(0xC0, 640, 480))) == Head("jpg", 640, 480)


@pytest.mark.parametrize("marker", [0xDA, 0xD9])
def test_behind_the_scan_or_the_end_no_size_is_looked_for(marker):
    assert head_of(jpeg(segment(marker, b"abc"), frame(0xC0, 640, 480))) is None


def test_a_segment_of_no_length_is_gone_over_by_its_two_bytes():
    assert head_of(jpeg(b"\xff\xe0\0\0", frame(0xC0, 640, 480))) == Head("jpg", 640, 480)


def test_a_frame_header_that_is_cut_off_says_nothing():
    whole = jpeg(frame(0xC0, 640, 480))
    assert [head_of(whole[:end]) is not None for end in (10, 11, 12)] == [False, True, True]


def test_what_is_no_marker_where_one_must_stand_ends_the_reading():
    assert head_of(jpeg(segment(0xFE, b"a"), b"\0", frame(0xC0, 640, 480))) is None


def test_the_first_word_of_how_it_was_held_counts_and_only_in_its_segment():
    held = segment(0xE1, exif(6, b"MM"))
    assert head_of(jpeg(held, segment(0xE1, exif(1, b"MM")), frame(0xC0, 640, 480))) == Head("jpg", 480, 640)
    assert head_of(jpeg(segment(0xE2, exif(6, b"MM")), frame(0xC0, 640, 480))) == Head("jpg", 640, 480)


@pytest.mark.parametrize(("end", "found"), [(23, None), (24, Head("png", 5, 7))])
def test_a_png_says_its_size_in_its_first_24_bytes(end, found):
    """ISO/IEC 15948, 5.3 and 11.2.2: signature, length, IHDR, width, height."""
    raw = b"\x89PNG\r\n\x1a\n" + struct.pack(">I", 13) + b"IHDR" + struct.pack(">II", 5, 7)
    assert head_of(raw[:end]) == found
