"""The pages of a PDF as pictures: of the size of their paper, and of exactly
as many dots as were asked for.
"""

from __future__ import annotations

import pytest
from PySide6.QtCore import QSize
from PySide6.QtGui import QColor

from jobsheet.gui.pages.pdf_pages import PdfPages


def _pdf():
    """Two bare pages, A4 and letter, the first with a black square in its lower left quarter."""
    parts = [b"%PDF-1.4\n"]
    objects = [
        b"<</Type/Catalog/Pages 2 0 R>>", b"<</Type/Pages/Kids[3 0 R 4 0 R]/Count 2>>",
        b"<</Type/Page/Parent 2 0 R/MediaBox[0 0 595 842]/Contents 5 0 R>>", b"<</Type/Page/Parent 2 0 R/MediaBox[0 0 612 792]>>",
        b"<</Length 18>>stream\n0 0 297.5 421 re f\nendstream",
    ]  # fmt: skip
    places = []
    for number, body in enumerate(objects, 1):
        places.append(sum(map(len, parts)))
        parts.append(b"%d 0 obj" % number + body + b"endobj\n")
    start = sum(map(len, parts))
    table = b"xref\n0 6\n0000000000 65535 f \n" + b"".join(b"%010d 00000 n \n" % place for place in places)
    return b"".join(parts) + table + b"trailer<</Size 6/Root 1 0 R>>\nstartxref\n%d\n%%%%EOF" % start


@pytest.fixture
def pages():
    made = PdfPages(_pdf())
    yield made
    made.close()


def test_every_page_has_the_size_of_its_paper(pages):
    assert len(pages) == 2
    assert [(size.width(), size.height()) for size in pages.sizes] == [(595, 842), (612, 792)]


@pytest.mark.parametrize("dots", [QSize(100, 141), QSize(101, 141), QSize(7, 3)])
def test_a_picture_has_exactly_so_many_dots(pages, dots):
    assert pages.picture(0, dots).size() == dots


def test_it_is_painted_on_white_and_the_right_way_up(pages):
    image = pages.picture(0, QSize(60, 84))
    assert image.pixelColor(10, 70) == QColor("black")
    assert image.pixelColor(50, 10) == QColor("white")
    assert pages.picture(1, QSize(60, 84)).pixelColor(10, 70) == QColor("white")


def test_a_picture_outlives_its_file():
    made = PdfPages(_pdf())
    image = made.picture(0, QSize(60, 84))
    made.close()
    assert image.pixelColor(10, 70) == QColor("black")
