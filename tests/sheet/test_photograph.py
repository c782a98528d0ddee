"""A photograph as it is printed: upright, grey, no finer than a printer shows."""

from __future__ import annotations

import io
from hashlib import sha256

import pytest

from jobsheet.sheet.photograph import fitted_grey
from tests.photographs_made import photograph
from tests.report.plans import plate

from .shots import shot, with_shots


def test_a_camera_that_lay_on_its_side_gives_an_upright_picture():
    """Orientation 6: what is left in the file is above when seen, so the light disc
    goes from left above to right above.
    """
    from PIL import Image

    made = fitted_grey("a", photograph(640, 480, orientation=6), 100, 100)
    image = Image.open(io.BytesIO(made[0]))
    assert image.height > image.width
    right, left = (
        image.getpixel((image.width * 7 // 10, image.height * 2 // 10)),
        image.getpixel((image.width * 2 // 10, image.height * 2 // 10)),
    )
    assert right > left + 80


def test_no_finer_than_a_printer_shows():
    from PIL import Image

    made = fitted_grey("b", photograph(4000, 3000), 96, 91)
    assert max(Image.open(io.BytesIO(made[0])).size) <= 400


@pytest.mark.parametrize("raw", [b"\xff\xd8\xff" + b"x" * 50, photograph()[:600], b""])
def test_a_damaged_one_leaves_a_frame_with_words(raw):
    assert isinstance(fitted_grey(sha256(raw).hexdigest(), raw, 90, 90), str)
    document, reader = with_shots(plate(), shot(raw, plate().set_ups[0].key))
    assert "photograph" in reader.pages[0].extract_text()
    assert document.pages
