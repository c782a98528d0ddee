"""Where and when a photograph was taken goes nowhere; how the camera was held stays,
and the picture itself is the same.
"""

from __future__ import annotations

import zlib
from io import BytesIO

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image
from PIL.PngImagePlugin import PngInfo

from jobsheet.storage.photos.camera_words import without_camera_words
from jobsheet.storage.photos.kept_photographs import places, taken_in
from jobsheet.storage.photos.picture_head import head_of
from tests.photographs_made import photograph
from tests.report.plans import bench, job


def with_place(orientation: int) -> bytes:
    """As a telephone writes it: maker, time, place, and how it was held."""
    image = Image.open(BytesIO(photograph(64, 48)))
    exif = Image.Exif()
    exif[0x010F], exif[0x0132], exif[0x0112] = "MAKER-SIGN", "2026:11:29 10:00:00", orientation
    exif[0x8825] = {1: "N", 2: (51.0, 30.0, 12.25), 3: "W", 4: (0.0, 7.0, 5.5)}
    out = BytesIO()
    image.save(out, "JPEG", exif=exif, comment=b"WORDS-SIGN", quality=90)
    return out.getvalue()


def opened(raw: bytes) -> Image.Image:
    return Image.open(BytesIO(raw))


@pytest.mark.parametrize("orientation", range(1, 9))
def test_place_maker_and_words_go_and_the_picture_stays(orientation):
    raw = with_place(orientation)
    assert b"MAKER-SIGN" in raw
    assert opened(raw).getexif().get_ifd(0x8825)
    made = without_camera_words(raw)
    assert b"MAKER-SIGN" not in made
    assert b"WORDS-SIGN" not in made
    exif = opened(made).getexif()
    assert not exif.get_ifd(0x8825)
    assert dict(exif) == ({0x0112: orientation} if orientation > 1 else {})
    assert opened(made).tobytes() == opened(raw).tobytes()
    assert head_of(made) == head_of(raw)
    assert without_camera_words(made) == made


def test_words_of_a_png_go_too():
    info = PngInfo()
    info.add_text("Comment", "WORDS-SIGN")
    out = BytesIO()
    opened(photograph(kind="PNG")).save(out, "PNG", pnginfo=info)
    made = without_camera_words(out.getvalue())
    assert b"WORDS-SIGN" in out.getvalue()
    assert b"WORDS-SIGN" not in made
    assert opened(made).tobytes() == opened(out.getvalue()).tobytes()


@pytest.mark.parametrize("kind", ["JPEG", "PNG"])
def test_a_picture_without_words_stays_as_it_is(kind):
    raw = photograph(kind=kind)
    assert without_camera_words(raw) == raw


@given(
    st.binary(max_size=300),
    st.sampled_from([b"\xff\xd8\xff\xe1", b"\xff\xd8\xff\xe0\x00\x04ab\xff\xe1", b"\x89PNG\r\n\x1a\n"]),
)
def test_no_bytes_at_all_break_it(rest, start):
    without_camera_words(start + rest)


def test_what_is_kept_beside_the_job_has_no_place(tmp_path):
    (tmp_path / "a.jpg").write_bytes(with_place(6))
    content = taken_in(tmp_path / "a.jpg", job([bench(10)]), places(tmp_path / "x.yaml"))
    kept = (tmp_path / "photographs" / f"{content}.jpg").read_bytes()
    assert b"MAKER-SIGN" not in kept
    assert (head_of(kept).width, head_of(kept).height) == (48, 64)


def test_a_chunk_without_a_byte_in_it_goes_where_it_is_one_of_words():
    """Twelve bytes: length, name and check (ISO/IEC 15948); also where it is the last of all."""
    raw = photograph(kind="PNG")
    empty = b"\0\0\0\0tEXt" + zlib.crc32(b"tEXt").to_bytes(4)
    assert without_camera_words(raw + empty) == raw
    assert without_camera_words(raw[:33] + empty + raw[33:]) == raw
    # What stops short of a whole chunk is left as it is.
    assert without_camera_words(raw + empty[:11]) == raw + empty[:11]
